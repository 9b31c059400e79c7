package palmturn.app.board;

import org.jspecify.annotations.Nullable;

/**
 * Everything that a trial's card shows.
 *
 * @param block the heading of its block
 * @param filmed the preview of its clip; null until it is read
 * @param next whether it is the trial to film next
 */
record CellContent(Cell cell, String block, @Nullable ClipPreview filmed, boolean next) {}
