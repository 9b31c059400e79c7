/**
 * The laboratory: tools that draw, measure and attack, for developers; users never install it, and
 * nothing of the product may import it.
 */
@NullMarked
package palmturn.lab;

import org.jspecify.annotations.NullMarked;
