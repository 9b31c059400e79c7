package palmturn.app.sheet;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import palmturn.app.session.TrialCandidate;
import palmturn.work.session.ClipSummary;

/** Texts about clips that are about to be added. */
final class ClipWords {
  private ClipWords() {}

  /** Returns the clip's name and, where it is only a part, from when to when. */
  static String name(TrialCandidate attempt, @Nullable ClipSummary seen) {
    String file = String.valueOf(attempt.clip().getFileName());
    if (attempt.fromS() == null || attempt.toS() == null) {
      return file;
    }
    return String.format(Locale.ROOT, "%s, %.1f s to %.1f s", file, attempt.fromS(), attempt.toS());
  }

  /** Returns the length and the frame rate, as far as they are known. */
  static String facts(TrialCandidate attempt, @Nullable ClipSummary seen) {
    if (seen == null) {
      return "";
    }
    double lengthS =
        attempt.fromS() == null || attempt.toS() == null
            ? seen.facts().durationS()
            : attempt.toS() - attempt.fromS();
    return String.format(
        Locale.ROOT, "%.1f s, %.0f frames/s", lengthS, 1 / seen.facts().medianFrameS());
  }

  /** Returns what stands in the way of scoring it, and what went wrong with it. */
  static List<String> warnings(
      TrialCandidate attempt, @Nullable ClipSummary seen, Map<Path, String> troubles) {
    List<String> all = new ArrayList<>();
    String trouble = troubles.get(attempt.clip());
    if (trouble != null) {
      all.add(trouble);
    }
    if (seen != null) {
      all.addAll(seen.facts().warnings());
    }
    return all;
  }
}
