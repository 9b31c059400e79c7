/** Readings turned into figures, with the limits and drills in force. */
@NullMarked
package palmturn.work.score;

import org.jspecify.annotations.NullMarked;
