/** Image tracking: decoded frames, similarities between them, tracked points and flow. */
@NullMarked
package palmturn.estimate.image;

import org.jspecify.annotations.NullMarked;
