/** Where two readings of a trial differ: each difference beside its pictures, and its decision. */
@NullMarked
package palmturn.app.differences;

import org.jspecify.annotations.NullMarked;
