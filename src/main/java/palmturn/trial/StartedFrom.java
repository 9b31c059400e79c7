package palmturn.trial;

import org.jspecify.annotations.Nullable;

/**
 * The origin of a reading's first marks; only a reading started from nothing is independent.
 *
 * @param reader the other reader, when started from that reader's marks
 */
public record StartedFrom(Origin source, @Nullable String reader) {
  /** A kind of origin. */
  public enum Origin {
    NOTHING,
    ESTIMATE,
    READER
  }

  public static final StartedFrom NOTHING = new StartedFrom(Origin.NOTHING, null);
  public static final StartedFrom ESTIMATE = new StartedFrom(Origin.ESTIMATE, null);

  /** Returns the text of files: {@code nothing}, {@code estimate} or {@code reader NAME}. */
  public String code() {
    return switch (source) {
      case NOTHING -> "nothing";
      case ESTIMATE -> "estimate";
      case READER -> "reader " + reader;
    };
  }

  /**
   * Parses what {@link #code} wrote.
   *
   * @throws IllegalArgumentException if the text is none of the three forms
   */
  public static StartedFrom parse(String code) {
    if (code.equals("nothing")) {
      return NOTHING;
    }
    if (code.equals("estimate")) {
      return ESTIMATE;
    }
    if (code.startsWith("reader ") && code.length() > "reader ".length()) {
      return new StartedFrom(Origin.READER, code.substring("reader ".length()));
    }
    throw new IllegalArgumentException(
        "\"%s\" is not one of nothing, estimate, reader NAME".formatted(code));
  }
}
