/**
 * Figures to what to train: the rules in order, the drills that fit, and a plan for the coming
 * weeks. It claims no mechanism and makes no diagnosis.
 */
@NullMarked
package palmturn.advise;

import org.jspecify.annotations.NullMarked;
