/**
 * Clips with known truth: a person drawn in three dimensions doing the test, with sound, from a
 * seed. Nothing here knows how Palmturn measures, so that the one can check the other.
 */
@NullMarked
package palmturn.synth;

import org.jspecify.annotations.NullMarked;
