/** The window: JavaFX views, one folder a pane, each beside a plain model that needs no screen. */
@NullMarked
package palmturn.app;

import org.jspecify.annotations.NullMarked;
