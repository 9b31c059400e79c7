/**
 * Two readings of one trial beside each other: which marks belong together, where the readings
 * differ, how well they agree, and the settled reading that decisions make of them.
 */
@NullMarked
package palmturn.settle;

import org.jspecify.annotations.NullMarked;
