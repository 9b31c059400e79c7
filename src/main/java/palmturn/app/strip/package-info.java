/** The beat strip: time from left to right, palm slaps above the line, back slaps below. */
@NullMarked
package palmturn.app.strip;

import org.jspecify.annotations.NullMarked;
