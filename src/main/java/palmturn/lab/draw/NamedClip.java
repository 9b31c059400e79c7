package palmturn.lab.draw;

/**
 * A clip of a set.
 *
 * @param name of its files
 * @param parameters what it shows
 */
public record NamedClip(String name, ClipParameters parameters) {}
