/** Estimates of clips and trials, one at a time or many at once. */
@NullMarked
package palmturn.work.estimate;

import org.jspecify.annotations.NullMarked;
