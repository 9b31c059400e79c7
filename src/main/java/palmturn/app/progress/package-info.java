/** One athlete over sessions. */
@NullMarked
package palmturn.app.progress;

import org.jspecify.annotations.NullMarked;
