/** The landmark networks' running times. */
@NullMarked
package palmturn.lab.networks;

import org.jspecify.annotations.NullMarked;
