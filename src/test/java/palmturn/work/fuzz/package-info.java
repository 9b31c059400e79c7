/** Hostile input: files changed at random by a seed, and what the program makes of them. */
@NullMarked
package palmturn.work.fuzz;

import org.jspecify.annotations.NullMarked;
