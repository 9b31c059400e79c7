package palmturn.report;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The report in the order it is read in, every figure already a text; the template only lays it
 * out. Texts ending in {@code Svg} are markup of the program's own making, all others are escaped.
 *
 * @param css the whole style sheet
 * @param title headline
 * @param intro who, where, when, by whom
 * @param open what is still to be done, one sentence each
 * @param blocks the hands side by side, baseline first
 * @param train what to train; null without figures
 * @param filmed one row a trial
 * @param limits what the figures are held against, with sources
 * @param trials one part a trial that has marks
 * @param messages between athlete and coach
 * @param notShown what the clips could not show
 * @param cautions in full
 * @param made when and with what
 */
public record Page(
    String css,
    String title,
    List<String> intro,
    List<String> open,
    List<BlockPart> blocks,
    @Nullable TrainPart train,
    List<FilmedRow> filmed,
    List<String> limits,
    List<TrialPart> trials,
    List<MessageRow> messages,
    List<String> notShown,
    List<String> cautions,
    String made) {

  /** A sentence with its point in bold. */
  public record Sentence(String before, String strong, String after) {}

  /** The hands of one block. */
  public record BlockPart(
      String heading,
      List<Sentence> sentences,
      @Nullable Strip left,
      @Nullable Strip right,
      List<QualityRow> rows,
      String note) {}

  /** A small beat strip with its caption. */
  public record Strip(String caption, String chartSvg) {}

  /** One quality of both hands. */
  public record QualityRow(
      String name,
      String unit,
      @Nullable String left,
      @Nullable String right,
      String chartSvg,
      @Nullable Verdict verdict,
      String line) {}

  /** What is known of one trial's clip. */
  public record FilmedRow(
      String trial,
      String clip,
      String length,
      String frames,
      String sound,
      String reading,
      List<String> warnings) {}

  /** One trial in full. */
  public record TrialPart(
      String id,
      String heading,
      String reading,
      @Nullable String stripSvg,
      @Nullable String intervalsSvg,
      List<MeasureGroup> groups,
      String faults,
      String source,
      @Nullable ReadingsPart readings,
      @Nullable EstimatePart estimate,
      List<FaultPicture> pictures,
      String pictureNote) {}

  /** Two readings of a trial beside each other. */
  public record ReadingsPart(
      List<ReadingRow> counts,
      String heading,
      String first,
      String second,
      List<DifferenceRow> differences,
      List<String> sentences) {}

  /** What one reading of a trial comes to. */
  public record ReadingRow(
      String reading, String slaps, String doubles, String clean, String rate, String how) {}

  /** One place where two readings differ, and how it was decided. */
  public record DifferenceRow(
      String at, String what, String first, String second, String decided) {}

  /** What the program found in a trial by itself. */
  public record EstimatePart(
      List<String> sentences, List<String> warnings, @Nullable String elbowSvg) {}

  /** The measures of one quality. */
  public record MeasureGroup(String quality, List<MeasureRow> rows) {}

  /** One measure of a trial. */
  public record MeasureRow(
      String name,
      String value,
      String interval,
      String limit,
      @Nullable Verdict verdict,
      String sentence) {}

  /** A fault as it looks in the clip. */
  public record FaultPicture(String source, String alt, String caption) {}

  /** A word between athlete and coach. */
  public record MessageRow(String from, String about, String text) {}
}
