/** A session in one file, to be sent and to come back. */
@NullMarked
package palmturn.work.pack;

import org.jspecify.annotations.NullMarked;
