/** The way of clips into a session, and where one left a session. */
@NullMarked
package palmturn.app.session;

import org.jspecify.annotations.NullMarked;
