/** The stage: the exact picture of one frame, stepping, and playing by the frames' own times. */
@NullMarked
package palmturn.app.stage;

import org.jspecify.annotations.NullMarked;
