package palmturn.trial;

import org.jspecify.annotations.Nullable;

/**
 * The arrival of a reading with a pack.
 *
 * @param reader who made it
 * @param pack the earliest pack that brought it; null where that was not recorded
 * @param sha256 of its marks as they came, hex digest
 * @param changed whether it has been worked on here since
 */
public record Received(String reader, @Nullable PackOrigin pack, String sha256, boolean changed) {}
