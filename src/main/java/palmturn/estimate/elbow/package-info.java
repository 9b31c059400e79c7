/** The elbow: found, followed and measured. */
@NullMarked
package palmturn.estimate.elbow;

import org.jspecify.annotations.NullMarked;
