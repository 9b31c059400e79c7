/**
 * What both faces of the program do: open, add, score, report and so on. One interface for progress
 * and stopping, one error meant for users.
 */
@NullMarked
package palmturn.work;

import org.jspecify.annotations.NullMarked;
