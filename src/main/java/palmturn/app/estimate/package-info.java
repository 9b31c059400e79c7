/** The estimate of the trial on the stage: hidden, shown, or being made. */
@NullMarked
package palmturn.app.estimate;

import org.jspecify.annotations.NullMarked;
