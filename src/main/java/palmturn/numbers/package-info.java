/**
 * Statistics and signals on arrays: {@code double[]} in, a value or a small record out, null where
 * the input is too short for an answer. Nothing here knows what a slap is.
 */
@NullMarked
package palmturn.numbers;

import org.jspecify.annotations.NullMarked;
