/**
 * One voice: the words for figures, names, verdicts, estimates and differences, used by the command
 * line, the report, the charts and the app alike. Pure functions; nothing here computes a figure.
 */
@NullMarked
package palmturn.wording;

import org.jspecify.annotations.NullMarked;
