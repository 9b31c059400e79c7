/** Decoded frames in grey, their stabilised coordinates and points followed from frame to frame. */
@NullMarked
package palmturn.estimate.frames;

import org.jspecify.annotations.NullMarked;
