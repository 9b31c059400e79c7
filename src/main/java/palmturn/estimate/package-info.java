/** Pixels and samples to an estimate: a pipeline of small steps, each of which can be run alone. */
@NullMarked
package palmturn.estimate;

import org.jspecify.annotations.NullMarked;
