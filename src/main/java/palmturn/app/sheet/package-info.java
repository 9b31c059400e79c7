/** Small questions and the list of all keys, laid over the window. */
@NullMarked
package palmturn.app.sheet;

import org.jspecify.annotations.NullMarked;
