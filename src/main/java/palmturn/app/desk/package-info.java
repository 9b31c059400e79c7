/** What is open: a session, its board and one trial; every pane's model hangs on it. */
@NullMarked
package palmturn.app.desk;

import org.jspecify.annotations.NullMarked;
