package palmturn.cli;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import palmturn.measure.RetestScore;

/** Each later block against the one before: the change, and what of it may be the drill's. */
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
      int digits = FigureText.digits(change.quality());
      rows.add(
          List.of(
              change.hand().code(),
              FigureText.named(change.measure()),
              FigureText.number(change.before(), digits),
              FigureText.number(change.after(), digits),
              FigureText.number(change.difference(), digits),
              FigureText.range(change.difference95(), digits),
              change.verdict().code()));
    }
    return rows;
  }

  private static List<List<String>> net(List<RetestScore> changes) {
    List<List<String>> rows = new ArrayList<>();
    rows.add(List.of("hand", "quality", "control", "net change", "95 %", "verdict"));
    for (RetestScore change : changes) {
      int digits = FigureText.digits(change.quality());
      rows.add(
          List.of(
              change.hand().code(),
              FigureText.named(change.measure()),
              change.control().code(),
              FigureText.number(change.netDifference(), digits),
              FigureText.range(change.net95(), digits),
              change.netVerdict().code()));
    }
    return rows;
  }
}
