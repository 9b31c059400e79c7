/** The command line: one thin class a command, and one place that turns errors into exit status. */
@NullMarked
package palmturn.cli;

import org.jspecify.annotations.NullMarked;
