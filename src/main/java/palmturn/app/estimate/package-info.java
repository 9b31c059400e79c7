/** What the program found in the open trial: whether it may be seen, and the making of it. */
@NullMarked
package palmturn.app.estimate;

import org.jspecify.annotations.NullMarked;
