/** The row of keys that are valid now; each is a button too. */
@NullMarked
package palmturn.app.hints;

import org.jspecify.annotations.NullMarked;
