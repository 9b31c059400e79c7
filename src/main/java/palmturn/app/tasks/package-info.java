/** Work away from the screen's thread, and a version on the calling thread for tests. */
@NullMarked
package palmturn.app.tasks;

import org.jspecify.annotations.NullMarked;
