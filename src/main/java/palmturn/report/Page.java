package palmturn.report;

import java.util.List;
import org.jspecify.annotations.Nullable;
import palmturn.wording.EstimateSummary;
import palmturn.wording.Figures;
import palmturn.wording.VerdictLabel;

/**
 * The report in the order it is read in, every figure already a text; the template only lays it
 * out. The first page is for the athlete, the rest for the coach.
 *
 * @param title headline
 * @param running what stands at the head of every printed page but the first
 * @param intro who, where, when, by whom
 * @param open what is missing or still to be done, one sentence each
 * @param lead the newest block that tells of both hands, else the newest; null without a figure
 * @param train what to train; null without figures
 * @param coach what the coach has to say; null for nothing
 * @param cautions in full
 * @param changes each later block against the block before
 * @param blocks the hands side by side in the other blocks
 * @param glance one row a trial that has figures
 * @param ceilings how fast each hand can go and stay clean
 * @param agreement how well each pair of readings agrees over the trials
 * @param notShown what the clips could not show
 * @param trials one part a trial that has marks or an estimate
 * @param filmed one row a trial
 * @param limits what the figures are held against, with sources
 * @param messages between athlete and coach
 * @param made when and with what
 */
public record Page(
    String title,
    String running,
    List<String> intro,
    List<String> open,
    @Nullable BlockPart lead,
    @Nullable TrainPart train,
    @Nullable CoachPart coach,
    List<String> cautions,
    List<ChangePart> changes,
    @Nullable ProgressPart progress,
    List<BlockPart> blocks,
    List<GlanceRow> glance,
    List<String> ceilings,
    List<AgreementPart> agreement,
    List<String> notShown,
    List<TrialPart> trials,
    List<FilmedRow> filmed,
    List<String> limits,
    List<MessageRow> messages,
    String made) {

  /** Returns whose marks all trials' figures come from, empty where they differ. */
  public String readBy() {
    return common(glance.stream().map(GlanceRow::readBy).toList());
  }

  private static String common(List<String> all) {
    return all.stream().distinct().count() == 1 ? all.get(0) : "";
  }

  /** Returns whether any trial tells how far the elbow went. */
  public boolean elbowTold() {
    return glance.stream().anyMatch(row -> !row.elbow().equals(Figures.NONE));
  }

  /** The athlete over several sessions. */
  public record ProgressPart(String intro, List<ProgressPage.Part> parts, String key) {}

  /** A sentence with its point in bold. */
  public record Sentence(String before, String strong, String after) {}

  /** The hands of one block. */
  public record BlockPart(
      String block,
      String heading,
      List<Sentence> sentences,
      List<Sentence> changed,
      @Nullable Strip left,
      @Nullable Strip right,
      List<QualityRow> rows,
      String elbow,
      String note) {

    /** Returns whose marks all rows come from, empty where they differ. */
    public String readBy() {
      return common(rows.stream().map(QualityRow::readBy).toList());
    }
  }

  /** A small beat strip with its caption. */
  public record Strip(String caption, Chart chart) {}

  /** One quality of both hands. */
  public record QualityRow(
      String name,
      String unit,
      @Nullable String left,
      @Nullable String right,
      Chart chart,
      @Nullable VerdictLabel verdict,
      String line,
      String readBy) {}

  /** The coach's message. */
  public record CoachPart(List<String> paragraphs, String about) {}

  /** A block against the block before it. */
  public record ChangePart(
      String heading, List<Sentence> sentences, List<ChangeRow> rows, String note) {

    /** Returns whose marks all rows come from, empty where they differ. */
    public String readBy() {
      return common(rows.stream().map(ChangeRow::readBy).toList());
    }
  }

  /** One quality of one hand in a block against the block before. */
  public record ChangeRow(
      String hand,
      String measure,
      String before,
      String after,
      String change,
      VerdictLabel verdict,
      String net,
      @Nullable VerdictLabel netVerdict,
      String readBy) {}

  /** A trial's headline figures. */
  public record GlanceRow(
      String id,
      String trial,
      String readBy,
      String slaps,
      String rate,
      String clean,
      String rhythm,
      String slowDown,
      String elbow) {}

  /** The agreement of two readings over all trials that both have read. */
  public record AgreementPart(
      String first, String second, List<String> sentences, List<AgreementRow> rows) {}

  /** Their agreement on one trial. */
  public record AgreementRow(
      String trial,
      String both,
      String onlyFirst,
      String onlySecond,
      String f,
      String offset,
      String side,
      String open) {}

  /** The facts of one trial's clip. */
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
      @Nullable Chart strip,
      @Nullable Chart intervals,
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

  /** The figures of one reading of a trial. */
  public record ReadingRow(
      String reading, String slaps, String doubles, String clean, String rate, String how) {}

  /** One place where two readings differ, and how it was decided. */
  public record DifferenceRow(
      String at, String what, String first, String second, String decided) {}

  /** The estimate of a trial. */
  public record EstimatePart(
      List<EstimateSummary.Line> lines,
      List<String> sentences,
      List<String> warnings,
      @Nullable Chart elbow) {}

  /** The measures of one quality. */
  public record MeasureGroup(String quality, List<MeasureRow> rows) {}

  /** One measure of a trial. */
  public record MeasureRow(
      String name,
      String value,
      String interval,
      @Nullable VerdictLabel verdict,
      String sentence) {}

  /** A fault as it looks in the clip. */
  public record FaultPicture(String source, String alt, String caption) {}

  /** A word between athlete and coach. */
  public record MessageRow(String from, String about, String text) {}
}
