/** Motion of the hand from optical flow: regions, stops and turns. */
@NullMarked
package palmturn.estimate.motion;

import org.jspecify.annotations.NullMarked;
