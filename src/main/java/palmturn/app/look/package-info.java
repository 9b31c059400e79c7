/** Colours, type and the shapes of icons: one source for style sheets and canvases. */
@NullMarked
package palmturn.app.look;

import org.jspecify.annotations.NullMarked;
