/** The tally: live figures with their limits. */
@NullMarked
package palmturn.app.tally;

import org.jspecify.annotations.NullMarked;
