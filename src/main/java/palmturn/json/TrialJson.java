package palmturn.json;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;
import palmturn.trial.ClipRef;
import palmturn.trial.Hand;
import palmturn.trial.Mirrored;
import palmturn.trial.PlacedPoints;
import palmturn.trial.Reading;
import palmturn.trial.Settlement;
import palmturn.trial.TimeScale;
import palmturn.trial.Trial;
import palmturn.trial.TrialId;

/** The form of a file under {@code trials/}; every key is described in docs/file-format.md. */
public final class TrialJson {
  private static final Format FORMAT = new Format("palmturn-trial", List.of());
  private static final Pattern SHA_256 = Pattern.compile("[0-9a-f]{64}");
  private static final double MOST_S = MarksJson.MOST_S;

  private TrialJson() {}

  /**
   * Reads a trial.
   *
   * @throws JsonException if the text is damaged, newer than this program, or holds a value that
   *     can't be
   */
  public static Trial read(String text) throws JsonException {
    return FORMAT.open(text).make(TrialJson::trial);
  }

  private static Trial trial(Keys keys) throws JsonException {
    return new Trial(
        new TrialId(
            keys.coded("hand", Hand.class), keys.text("block"), keys.integer("repeat", 1, 999)),
        keys.object("clip", TrialJson::clip),
        keys.numberOrNull("fromS", -MOST_S, MOST_S),
        keys.numberOrNull("toS", -MOST_S, MOST_S),
        keys.coded("mirrored", Mirrored.class),
        keys.above0OrNull("captureFps", 100_000),
        timeScale(keys),
        keys.above0OrNull("paceSlapsPerS", 50),
        keys.numberOrNull("soundOffsetS", -60, 60),
        readings(keys),
        keys.objectOrNull("estimate", EstimateJson::read),
        settlements(keys),
        keys.objectOr("places", PlacedJson::read, PlacedPoints.NONE),
        keys.rest());
  }

  private static List<Reading> readings(Keys keys) throws JsonException {
    List<Reading> readings = keys.list("readings", MarksJson::reading);
    Set<String> readers = new HashSet<>();
    for (Reading reading : readings) {
      if (!readers.add(reading.reader())) {
        throw keys.fault("two readings by \"%s\"".formatted(reading.reader()));
      }
    }
    return readings;
  }

  private static List<Settlement> settlements(Keys keys) throws JsonException {
    List<Settlement> all = keys.list("settlements", SettlementJson::read);
    for (int i = 0; i < all.size(); i++) {
      Settlement each = all.get(i);
      if (all.subList(0, i).stream().anyMatch(e -> e.between(each.first(), each.second()))) {
        throw keys.fault(
            "two settlements of \"%s\" and \"%s\"".formatted(each.first(), each.second()));
      }
    }
    return all;
  }

  private static ClipRef clip(Keys keys) throws JsonException {
    return new ClipRef(
        keys.text("path"),
        keys.parsed("sha256", TrialJson::sha256),
        keys.parsedOrNull("originalSha256", TrialJson::sha256),
        keys.flag("cropped", false),
        keys.above0("medianFrameS", 60),
        keys.rest());
  }

  static String sha256(String text) {
    if (!SHA_256.matcher(text).matches()) {
      throw new IllegalArgumentException("must be 64 hexadecimal digits in lower case");
    }
    return text;
  }

  private static TimeScale timeScale(Keys keys) throws JsonException {
    List<TimeScale.Piece> pieces = keys.list("timeScale", TrialJson::piece);
    String refused = keys.textOrEmpty("timeScaleRefused");
    for (int i = 1; i < pieces.size(); i++) {
      if (!(pieces.get(i).fromS() > pieces.get(i - 1).fromS())) {
        throw keys.fault("the pieces of timeScale must be in order of time");
      }
    }
    return new TimeScale(pieces.isEmpty() ? TimeScale.REAL.pieces() : pieces, refused);
  }

  private static TimeScale.Piece piece(Keys keys) throws JsonException {
    return new TimeScale.Piece(keys.number("fromS", -MOST_S, MOST_S), keys.above0("factor", 1000));
  }

  /** Returns a reading's line, without what it was when it came with a pack. */
  public static String line(Reading reading) {
    return JsonText.line(MarksJson.write(reading.withReceived(null)));
  }

  /** Returns the text of a trial's file. */
  public static String write(Trial trial) {
    ObjectNode file = FORMAT.begin();
    RecordForm.put(file, trial.id(), "hand block repeat");
    file.set(
        "clip",
        RecordForm.extra(
            RecordForm.of(trial.clip(), "path sha256 originalSha256? cropped* medianFrameS"),
            trial.clip().extra()));
    RecordForm.put(file, trial, "fromS? toS? mirrored captureFps?");
    file.set("timeScale", RecordForm.all(trial.timeScale().pieces(), "fromS factor"));
    RecordForm.put(
        file, trial, "timeScaleRefused=timeScale.refusedWhy* paceSlapsPerS? soundOffsetS?");
    file.set("readings", RecordForm.all(trial.readings(), MarksJson::write));
    if (trial.estimate() != null) {
      file.set("estimate", EstimateJson.write(trial.estimate()));
    }
    if (!trial.settlements().isEmpty()) {
      file.set("settlements", RecordForm.all(trial.settlements(), SettlementJson::write));
    }
    if (!trial.places().equals(PlacedPoints.NONE)) {
      file.set("places", PlacedJson.write(trial.places()));
    }
    return JsonText.page(RecordForm.extra(file, trial.extra()));
  }
}
