/** Hand and body landmarks from networks: sides, zones, wrist bend and turn range. */
@NullMarked
package palmturn.estimate.hands;

import org.jspecify.annotations.NullMarked;
