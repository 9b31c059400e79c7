/** What the landmark networks see of hands and body, where this user has installed them. */
@NullMarked
package palmturn.estimate.shape;

import org.jspecify.annotations.NullMarked;
