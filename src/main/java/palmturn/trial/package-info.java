/**
 * The records of a trial: hands, slaps, faults, spans, readings, sessions. Immutable records and
 * nothing else; every other room speaks in these words.
 */
@NullMarked
package palmturn.trial;

import org.jspecify.annotations.NullMarked;
