package palmturn.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import palmturn.trial.Estimate;
import palmturn.wording.EstimateSummary;
import palmturn.work.estimate.EstimateBatch;

/** An estimate as a few lines of plain text. */
final class EstimateText {
  private EstimateText() {}

  static String of(EstimateBatch.Outcome ended) {
    Estimate found = Objects.requireNonNull(ended.estimate(), "it failed");
    List<String> lines = new ArrayList<>();
    lines.add(
        "%s, %s hand"
            .formatted(
                ended.trial() == null
                    ? ended.clip()
                    : ended.trial().name() + " (" + ended.clip() + ")",
                Objects.requireNonNull(ended.hand(), "it failed").code()));
    EstimateSummary.of(found).forEach(each -> lines.add(line(each.name(), each.words())));
    found.warnings().forEach(warning -> lines.add(line("warning", warning)));
    return String.join("\n", lines).replace('\u00A0', ' ') + "\n";
  }

  private static String line(String name, String words) {
    return String.format(Locale.ROOT, "  %-12s %s", name, words);
  }
}
