package palmturn.report;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import palmturn.chart.HandsChart;
import palmturn.measure.HandScore;
import palmturn.measure.Limit;
import palmturn.measure.Measure;
import palmturn.measure.Measures;
import palmturn.measure.Quality;
import palmturn.measure.SideScore;
import palmturn.measure.TrialScore;
import palmturn.trial.Block;
import palmturn.trial.Hand;
import palmturn.trial.TrialId;
import palmturn.wording.Figures;
import palmturn.wording.Names;
import palmturn.wording.VerdictLabel;

/** The summaries of the blocks: the two hands of each side by side. */
final class BlockParts {
  private static final String AT_MOST = "≤\u00A0";
  private static final List<Quality> FOUR =
      List.of(Quality.SPEED, Quality.ACCURACY, Quality.RHYTHM, Quality.ENDURANCE);

  private final ReportInput input;

  BlockParts(ReportInput input) {
    this.input = input;
  }

  /** Returns the newest block that tells of both hands, else the newest; null without a figure. */
  @Nullable String lead() {
    List<String> blocks = new ArrayList<>(blocks());
    Collections.reverse(blocks);
    return blocks.stream()
        .filter(block -> tells(block, Hand.LEFT) && tells(block, Hand.RIGHT))
        .findFirst()
        .or(() -> blocks.stream().findFirst())
        .orElse(null);
  }

  /** Returns every block that has scored trials, in order. */
  List<String> blocks() {
    return input.score().hands().stream()
        .map(HandScore::block)
        .distinct()
        .sorted(Comparator.comparingInt(Block::order))
        .toList();
  }

  private boolean tells(String block, Hand hand) {
    return input.score().hands().stream()
        .anyMatch(s -> s.block().equals(block) && s.hand() == hand && s.mean() != null);
  }

  Page.BlockPart part(String block) {
    List<SideScore> sides =
        input.score().sides().stream().filter(side -> side.block().equals(block)).toList();
    List<Page.QualityRow> rows = new ArrayList<>();
    for (Quality quality : FOUR) {
      HandScore left = hand(block, Hand.LEFT, quality);
      HandScore right = hand(block, Hand.RIGHT, quality);
      if (left != null || right != null) {
        rows.add(row(block, quality, left, right, side(sides, quality)));
      }
    }
    return new Page.BlockPart(
        block,
        Names.heading(input.session(), block),
        sentences(block, sides),
        new ChangeSentences(input.session(), input.score()).sentences(block),
        strip(block, Hand.LEFT),
        strip(block, Hand.RIGHT),
        rows,
        elbow(block),
        "Circle: mean. Short lines: the trials. Box: 95\u00A0% interval of the mean, open where it"
            + " runs off the scale."
            + (rows.stream().anyMatch(BlockParts::bounded)
                ? " ≤: marks too coarse to say less."
                : ""));
  }

  private List<Page.Sentence> sentences(String block, List<SideScore> sides) {
    List<Page.Sentence> sentences = new ArrayList<>();
    if (sides.isEmpty()) {
      Hand only = hand(block, Hand.LEFT, Quality.SPEED) == null ? Hand.RIGHT : Hand.LEFT;
      sentences.addAll(HandSentences.of(only, quality -> shown(block, only, quality)));
    } else {
      Set<Hand> bounded = EnumSet.noneOf(Hand.class);
      for (Hand hand : Hand.values()) {
        if (bounded(block, hand)) {
          bounded.add(hand);
        }
      }
      sentences.addAll(new SideSentences(bounded).of(sides));
    }
    return sentences;
  }

  private String elbow(String block) {
    HandScore left = hand(block, Hand.LEFT, Quality.DRIFT);
    HandScore right = hand(block, Hand.RIGHT, Quality.DRIFT);
    if (left == null && right == null) {
      return "";
    }
    return "Elbow, largest distance from its place in the picture (found by the program): %s left, %s right; limit %s."
        .formatted(
            cm(left), cm(right), VerdictLabel.limit(Quality.DRIFT, input.limits().elbowCm()));
  }

  private static String cm(@Nullable HandScore score) {
    String figure = figure(Quality.DRIFT, score);
    return figure == null ? "unknown" : Figures.withUnit(figure, "cm");
  }

  private Page.QualityRow row(
      String block,
      Quality quality,
      @Nullable HandScore left,
      @Nullable HandScore right,
      @Nullable SideScore side) {
    Limit limit = input.limits().of(quality);
    String name = quality.shownName();
    Chart chart =
        ReportCharts.hands(
            "hands-" + block + "-" + quality.code(),
            "%s: left %s, right %s".formatted(name, spoken(quality, left), spoken(quality, right)),
            one(block, Hand.LEFT, left),
            one(block, Hand.RIGHT, right),
            quality,
            limit == null ? null : limit.value());
    return new Page.QualityRow(
        name,
        Names.headline(quality),
        shown(block, Hand.LEFT, quality),
        shown(block, Hand.RIGHT, quality),
        chart,
        side == null ? null : VerdictLabel.of(side.verdict()),
        side == null ? alone(left, right) : line(block, side, left, right),
        new MarkOrigin(input).of(readings(left, right), block));
  }

  private static List<String> readings(@Nullable HandScore left, @Nullable HandScore right) {
    return Stream.of(left, right)
        .filter(Objects::nonNull)
        .flatMap(score -> score.readings().stream())
        .distinct()
        .toList();
  }

  private static String alone(@Nullable HandScore left, @Nullable HandScore right) {
    boolean leftKnown = left != null && left.mean() != null;
    boolean rightKnown = right != null && right.mean() != null;
    return leftKnown || rightKnown
        ? "Only the %s hand has figures here.".formatted(leftKnown ? "left" : "right")
        : "Can’t be told; each trial below says why.";
  }

  private String line(
      String block, SideScore side, @Nullable HandScore left, @Nullable HandScore right) {
    if (side.difference() == null || side.difference95() == null || side.margin() == null) {
      return side.quality() == Quality.RHYTHM
          ? "needs two trials a hand with a figure, timed by the same source and as finely"
          : "needs two trials a hand with a figure";
    }
    Measure.Form form = side.measure().form();
    StringBuilder line =
        new StringBuilder(
            "right − left %s (%s)"
                .formatted(
                    Figures.withUnit(
                        form.difference(side.difference()),
                        side.measure().unit().equals("%") ? "points" : ""),
                    form.difference(side.difference95())));
    switch (side.verdict()) {
      case BALANCED -> line.append(", inside ±\u00A0").append(form.size(side.margin()));
      case UNCLEAR -> line.append("; ").append(SideSentences.further(side));
      case WEAKER_LEFT, WEAKER_RIGHT, CANNOT_TELL -> {}
    }
    if (side.quality() == Quality.ACCURACY && side.verdict() != SideScore.SideVerdict.UNCLEAR) {
      line.append("; ").append(clean(block, Hand.LEFT)).append(" and ");
      line.append(clean(block, Hand.RIGHT)).append(" clean");
    } else if (side.quality() != Quality.ACCURACY
        && side.verdict() != SideScore.SideVerdict.UNCLEAR
        && left != null
        && right != null
        && left.typicalError() != null
        && right.typicalError() != null) {
      line.append(
          "; typical error %s left, %s right"
              .formatted(form.size(left.typicalError()), form.size(right.typicalError())));
    }
    return line.toString();
  }

  private String clean(String block, Hand hand) {
    int clean = 0;
    int attempts = 0;
    for (TrialScore score : scores(block, hand)) {
      Integer here = score.accuracy().clean();
      if (here != null) {
        clean += here;
        attempts += score.accuracy().attempts();
      }
    }
    return String.format(Locale.ROOT, "%d of %d", clean, attempts);
  }

  private HandsChart.OneHand one(String block, Hand hand, @Nullable HandScore score) {
    if (score == null) {
      return new HandsChart.OneHand(List.of(), null, null, null);
    }
    List<Double> trials =
        scores(block, hand).stream()
            .map(score.measure()::value)
            .filter(Objects::nonNull)
            .map(Double::valueOf)
            .toList();
    var range = score.mean95();
    return new HandsChart.OneHand(
        trials,
        score.mean(),
        range == null ? null : range.low(),
        range == null ? null : range.high());
  }

  private Page.@Nullable Strip strip(String block, Hand hand) {
    for (ReportInput.Filmed filmed : input.trials()) {
      var id = filmed.trial().id();
      var reading = filmed.reading();
      if (reading != null
          && !reading.slaps().isEmpty()
          && filmed.trial().paceSlapsPerS() == null
          && id.hand() == hand
          && id.block().equals(block)) {
        return new Page.Strip(
            String.format(Locale.ROOT, "repeat %d: %s", id.repeat(), counts(id)),
            ReportCharts.smallStrip(
                "small-" + id.name(),
                "Marks of the " + Names.trial(id),
                filmed.trial(),
                reading,
                input.session().windowS()));
      }
    }
    return null;
  }

  private String counts(TrialId id) {
    return input.score().trials().stream()
        .filter(score -> score.trial().equals(id))
        .map(TrialParts::counts)
        .findFirst()
        .orElse("");
  }

  /** Returns the scores that the hand's mean rests on; paced trials serve nothing here. */
  private List<TrialScore> scores(String block, Hand hand) {
    return input.score().trials().stream()
        .filter(score -> score.trial().hand() == hand && score.trial().block().equals(block))
        .filter(score -> !paced(score))
        .toList();
  }

  private boolean paced(TrialScore score) {
    return input.trials().stream()
        .anyMatch(
            filmed ->
                filmed.trial().id().equals(score.trial())
                    && filmed.trial().paceSlapsPerS() != null);
  }

  private @Nullable HandScore hand(String block, Hand hand, Quality quality) {
    return input.score().hands().stream()
        .filter(s -> s.block().equals(block) && s.hand() == hand && s.quality() == quality)
        .findFirst()
        .orElse(null);
  }

  private static @Nullable SideScore side(List<SideScore> sides, Quality quality) {
    return sides.stream().filter(side -> side.quality() == quality).findFirst().orElse(null);
  }

  private static @Nullable String figure(Quality quality, @Nullable HandScore score) {
    return score == null || score.mean() == null
        ? null
        : Measures.headline(quality).text(score.mean());
  }

  /** Returns a hand's figure as it is shown, null where it can't be told. */
  private @Nullable String shown(String block, Hand hand, Quality quality) {
    String figure = figure(quality, hand(block, hand, quality));
    boolean bound = quality == Quality.RHYTHM && bounded(block, hand);
    return figure != null && bound ? AT_MOST + figure : figure;
  }

  /** A mean over trials of which one is only an upper bound is an upper bound itself. */
  private boolean bounded(String block, Hand hand) {
    return scores(block, hand).stream()
        .anyMatch(score -> Figures.atMost(Measures.STEADY_CV, score));
  }

  private static boolean bounded(Page.QualityRow row) {
    return Stream.of(row.left(), row.right())
        .anyMatch(figure -> figure != null && figure.startsWith(AT_MOST));
  }

  private static String spoken(Quality quality, @Nullable HandScore score) {
    String figure = figure(quality, score);
    return figure == null ? "unknown" : figure + " " + Names.headline(quality);
  }
}
