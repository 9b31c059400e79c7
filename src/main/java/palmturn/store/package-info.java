/**
 * The session folder: what is kept is on the disk before it is shown as kept, whole files are
 * replaced in one step, and one program writes at a time.
 */
@NullMarked
package palmturn.store;

import org.jspecify.annotations.NullMarked;
