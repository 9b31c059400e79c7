/** Marks on a trial: every edit is a sentence in a history, and is kept as it is made. */
@NullMarked
package palmturn.app.marking;

import org.jspecify.annotations.NullMarked;
