/** Two readings compared: the differences of a trial, the agreement over many. */
@NullMarked
package palmturn.work.settle;

import org.jspecify.annotations.NullMarked;
