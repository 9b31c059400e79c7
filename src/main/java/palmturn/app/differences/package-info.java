/** Review of the differences between two readings of a trial, each with pictures and a decision. */
@NullMarked
package palmturn.app.differences;

import org.jspecify.annotations.NullMarked;
