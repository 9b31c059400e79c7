/** Onsets of slaps in the sound. */
@NullMarked
package palmturn.estimate.sound;

import org.jspecify.annotations.NullMarked;
