/** The trial board: hands across, repeats down, blocks apart. */
@NullMarked
package palmturn.app.board;

import org.jspecify.annotations.NullMarked;
