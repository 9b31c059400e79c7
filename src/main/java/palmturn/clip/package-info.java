/**
 * Video and sound in: the frame table, any frame exactly, sound on the same time line, facts.
 * Straight on FFmpeg's libraries; nothing of them leaves this room, but that {@code film} opens its
 * files here too.
 */
@NullMarked
package palmturn.clip;

import org.jspecify.annotations.NullMarked;
