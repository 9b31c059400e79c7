/**
 * The estimate held against clips whose truth is known, and figures counted on simulated athletes.
 */
@NullMarked
package palmturn.lab.bench;

import org.jspecify.annotations.NullMarked;
