/** The elbow's path held against clips whose truth is known. */
@NullMarked
package palmturn.lab.elbow;

import org.jspecify.annotations.NullMarked;
