/** The bottom row of hints with the keys of the current context; each is a button too. */
@NullMarked
package palmturn.app.hints;

import org.jspecify.annotations.NullMarked;
