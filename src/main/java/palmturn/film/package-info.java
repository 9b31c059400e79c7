/**
 * Pictures and clips out: encoding a clip with exact times, and stills. The only room beside clip
 * that knows FFmpeg.
 */
@NullMarked
package palmturn.film;

import org.jspecify.annotations.NullMarked;
