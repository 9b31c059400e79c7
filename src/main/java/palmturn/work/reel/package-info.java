/** A trial's worst moments and its cleanest second as a short clip in slow motion. */
@NullMarked
package palmturn.work.reel;

import org.jspecify.annotations.NullMarked;
