package palmturn.app.board;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import palmturn.measure.TrialScore;
import palmturn.trial.Block;
import palmturn.trial.Hand;
import palmturn.trial.TrialId;

/** Texts about a trial on the board. */
public final class CellWords {
  private CellWords() {}

  /** Returns a trial's name for people, such as "Right hand 2, baseline". */
  public static String name(TrialId id) {
    String block =
        id.block().equals(Block.BASELINE) ? "baseline" : "after drill " + Block.order(id.block());
    return name(id, block);
  }

  /**
   * Returns a trial's name for people, such as "Right hand 2, after paced flips".
   *
   * @param block the heading of its block
   */
  static String name(TrialId id, String block) {
    String hand = id.hand() == Hand.LEFT ? "Left" : "Right";
    return String.format(
        Locale.ROOT, "%s hand %d, %s", hand, id.repeat(), block.toLowerCase(Locale.ROOT));
  }

  /** Returns the word in the cell. */
  static String stateWord(Cell cell, boolean next) {
    if (next) {
      return "film next";
    }
    return cell.paceSlapsPerS() == null ? cell.state().words() : "click";
  }

  /**
   * Returns sentences about a trial: its clip, its figures, or how to film it.
   *
   * @param next whether this is the trial to film next
   */
  static List<String> describe(Cell cell, @Nullable ClipPreview filmed, boolean next) {
    List<String> lines = new ArrayList<>();
    if (cell.state() == Cell.State.NOT_FILMED) {
      lines.add(
          next
              ? "Film this trial next, after 30 s of rest; alternate the hands."
              : "Not filmed yet.");
      lines.add("Drop its clip here, or choose it and add clips.");
      return lines;
    }
    if (filmed != null) {
      lines.add(
          String.format(
              Locale.ROOT, "%s, %.1f s, %s", cell.state().words(), filmed.lengthS(), rate(filmed)));
    } else {
      lines.add(cell.state().words());
    }
    if (cell.paceSlapsPerS() != null) {
      lines.add(
          String.format(
              Locale.ROOT,
              "Filmed to a click track at %.1f\u00a0slaps/s: used for the clean ceiling only.",
              cell.paceSlapsPerS()));
    }
    if (cell.score() != null) {
      figures(lines, cell.score());
    }
    return lines;
  }

  /** Returns everything about a trial as one text, for tooltips and screen readers. */
  static String fullText(Cell cell, String block, @Nullable ClipPreview filmed, boolean next) {
    List<String> lines = new ArrayList<>();
    lines.add(name(cell.id(), block));
    lines.addAll(describe(cell, filmed, next));
    if (filmed != null) {
      lines.addAll(filmed.warnings());
    }
    return String.join("\n", lines);
  }

  private static String rate(ClipPreview filmed) {
    return String.format(Locale.ROOT, "%.0f frames/s", filmed.fps());
  }

  private static void figures(List<String> lines, TrialScore score) {
    List<String> figures = new ArrayList<>();
    add(figures, "%.1f\u00a0slaps/s", score.speed().rateSlapsPerS());
    add(figures, "clean share\u00a0%.0f\u00a0%%", score.accuracy().cleanSharePct());
    add(figures, "CV\u00a0%.1f\u00a0%%", score.rhythm().steadyCvPct());
    if (!figures.isEmpty()) {
      lines.add(String.join(", ", figures));
    }
  }

  private static void add(List<String> to, String form, @Nullable Double value) {
    if (value != null) {
      to.add(String.format(Locale.ROOT, form, value));
    }
  }
}
