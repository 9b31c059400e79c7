/** Drawn clips with known truth, from an arm and a room to film, sound and marks. */
@NullMarked
package palmturn.lab.draw;

import org.jspecify.annotations.NullMarked;
