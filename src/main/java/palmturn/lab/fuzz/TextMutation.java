package palmturn.lab.fuzz;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Random;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;

/**
 * Damages a text's bytes, or puts other words in the place of some; the same seed does the same.
 */
public final class TextMutation {
  /** A token of JSON: string, number, word or punctuation. */
  private static final Pattern WORD =
      Pattern.compile("\"(?:[^\"\\\\]|\\\\.)*\"|-?\\d[\\d.eE+-]*|\\b[a-z]+\\b|[\\[\\]{},:]");

  /** Tokens that parsers stumble over: extremes, odd strings, broken nesting. */
  private static final List<String> REPLACEMENTS =
      List.of(
          "null",
          "true",
          "0",
          "-1",
          "-0.0",
          "1e308",
          "1e999",
          "0.1",
          "NaN",
          "99999999999999999999",
          "9007199254740993",
          "\"\"",
          "\" \"",
          "\"..\"",
          "\"a\\u0000b\\n\\u001b[2J\"",
          "\"\\ud800\"",
          "\"2026-13-45\"",
          "\"+999999999-12-31T23:59:59Z\"",
          "\"right-baseline-1\"",
          "[]",
          "{}",
          "[null]",
          "[[[[[[[]]]]]]]",
          "",
          ",");

  private TextMutation() {}

  public static String of(String good, Random random) {
    if (random.nextInt(3) == 0) {
      byte[] bytes = Mutation.of(good.getBytes(StandardCharsets.UTF_8), random);
      return new String(bytes, StandardCharsets.UTF_8);
    }
    String text = good;
    int times = 1 + random.nextInt(3);
    for (int i = 0; i < times; i++) {
      List<MatchResult> words = WORD.matcher(text).results().toList();
      if (words.isEmpty()) {
        return text;
      }
      MatchResult word = words.get(random.nextInt(words.size()));
      MatchResult other = words.get(random.nextInt(words.size()));
      String instead =
          random.nextInt(4) == 0
              ? other.group()
              : REPLACEMENTS.get(random.nextInt(REPLACEMENTS.size()));
      text = text.substring(0, word.start()) + instead + text.substring(word.end());
    }
    return text;
  }
}
