/** The landmark networks on this computer: looked for, installed and removed. */
@NullMarked
package palmturn.work.models;

import org.jspecify.annotations.NullMarked;
