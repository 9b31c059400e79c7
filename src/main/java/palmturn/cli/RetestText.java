package palmturn.cli;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import palmturn.measure.RetestScore;
import palmturn.wording.Figures;
import palmturn.wording.Names;
import palmturn.wording.VerdictLabel;

/** Tables of each later block against the one before: the change, and its net of the control. */
final class RetestText {
  private RetestText() {}

  static List<String> lines(List<RetestScore> changes) {
    Map<String, List<RetestScore>> blocks = new LinkedHashMap<>();
    changes.forEach(
        each -> blocks.computeIfAbsent(each.block(), key -> new ArrayList<>()).add(each));
    List<String> lines = new ArrayList<>();
    blocks.forEach((block, here) -> add(lines, block, here));
    return lines;
  }

  private static void add(List<String> lines, String block, List<RetestScore> changes) {
    String drill = changes.get(0).drill();
    lines.add("");
    lines.add(
        "%s against the block before%s".formatted(block, drill == null ? "" : ", after " + drill));
    lines.addAll(TextTable.lines(changed(changes)));
    List<RetestScore> controlled =
        changes.stream().filter(each -> each.control() != RetestScore.Control.NONE).toList();
    if (controlled.isEmpty()) {
      lines.add("Practice alone improves scores; there is no control to tell the drill from it.");
      return;
    }
    lines.add("");
    lines.add("Net of practice: the change less that of the control");
    lines.addAll(TextTable.lines(net(controlled)));
    lines.add("Practice alone improves scores: only the net change may be the drill's.");
  }

  private static List<List<String>> changed(List<RetestScore> changes) {
    List<List<String>> rows = new ArrayList<>();
    rows.add(List.of("hand", "quality", "before", "after", "change", "95 %", "verdict"));
    for (RetestScore change : changes) {
      rows.add(
          List.of(
              change.hand().code(),
              Names.qualityWithUnit(change.quality()),
              Figures.of(change.measure(), change.before()),
              Figures.of(change.measure(), change.after()),
              Figures.difference(change.quality(), change.difference()),
              Figures.difference(change.quality(), change.difference95()),
              VerdictLabel.of(change.verdict()).words()));
    }
    return rows;
  }

  private static List<List<String>> net(List<RetestScore> changes) {
    List<List<String>> rows = new ArrayList<>();
    rows.add(List.of("hand", "quality", "control", "net change", "95 %", "verdict"));
    for (RetestScore change : changes) {
      rows.add(
          List.of(
              change.hand().code(),
              Names.qualityWithUnit(change.quality()),
              change.control().code().replace('-', ' '),
              Figures.difference(change.quality(), change.netDifference()),
              Figures.difference(change.quality(), change.net95()),
              VerdictLabel.of(change.netVerdict()).words()));
    }
    return rows;
  }
}
