package palmturn.trial;

import java.util.Arrays;
import java.util.Locale;
import java.util.stream.Collectors;

/**
 * An enum constant with a fixed spelling in files, on the command line and in CSV: its name in
 * lower case, with hyphens. A constant that is renamed changes the spelling, which a test keeps.
 */
public interface Coded {
  /** Returns the constant's name, as every enum has it. */
  String name();

  /** Returns the word as it is written in files. */
  default String code() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /**
   * Returns the constant of an enum that is written as {@code code}.
   *
   * @throws IllegalArgumentException if there is none, naming those there are
   */
  static <E extends Enum<E> & Coded> E parse(Class<E> type, String code) {
    for (E value : type.getEnumConstants()) {
      if (value.code().equals(code)) {
        return value;
      }
    }
    throw new IllegalArgumentException("\"%s\" is not one of %s".formatted(code, codes(type)));
  }

  /** Returns all spellings of an enum, joined by commas. */
  static <E extends Enum<E> & Coded> String codes(Class<E> type) {
    return Arrays.stream(type.getEnumConstants())
        .map(Coded::code)
        .collect(Collectors.joining(", "));
  }
}
