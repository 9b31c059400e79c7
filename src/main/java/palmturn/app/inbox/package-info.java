/** The sessions that were sent to a coach, by how far each is. */
@NullMarked
package palmturn.app.inbox;

import org.jspecify.annotations.NullMarked;
