package palmturn.trial;

/**
 * Which file a trial was filmed in.
 *
 * @param path relative to the session's folder, with forward slashes
 * @param sha256 of the whole file, 64 lower-case hexadecimal digits
 * @param medianFrameS median distance between frames, media seconds
 * @param extra unknown keys
 */
public record ClipRef(String path, String sha256, double medianFrameS, Extra extra) {}
