/** The same moment, both hands: two trials side by side, aligned on a slap and stepped together. */
@NullMarked
package palmturn.app.pair;

import org.jspecify.annotations.NullMarked;
