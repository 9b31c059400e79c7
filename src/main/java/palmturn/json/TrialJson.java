package palmturn.json;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;
import palmturn.trial.ClipRef;
import palmturn.trial.Coded;
import palmturn.trial.Estimate;
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
    Keys keys = FORMAT.open(text);
    Hand hand = keys.parsed("hand", code -> Coded.parse(Hand.class, code));
    String block = keys.text("block");
    int repeat = keys.integer("repeat", 1, 999);
    TrialId id = keys.make(() -> new TrialId(hand, block, repeat));
    ClipRef clip = keys.object("clip", TrialJson::clip);
    Double fromS = keys.numberOrNull("fromS", -MOST_S, MOST_S);
    Double toS = keys.numberOrNull("toS", -MOST_S, MOST_S);
    Mirrored mirrored = keys.parsed("mirrored", code -> Coded.parse(Mirrored.class, code));
    Double captureFps = keys.above0OrNull("captureFps", 100_000);
    TimeScale scale = timeScale(keys);
    Double pace = keys.above0OrNull("paceSlapsPerS", 50);
    Double soundOffsetS = keys.numberOrNull("soundOffsetS", -60, 60);
    List<Reading> readings = keys.list("readings", MarksJson::reading);
    refuseTwice(keys, readings);
    Estimate estimate = keys.objectOrNull("estimate", EstimateJson::read);
    List<Settlement> settlements = keys.list("settlements", SettlementJson::read);
    refuseSettledTwice(keys, settlements);
    PlacedPoints places = keys.objectOrNull("places", PlacedJson::read);
    return keys.make(
        () ->
            new Trial(
                id,
                clip,
                fromS,
                toS,
                mirrored,
                captureFps,
                scale,
                pace,
                soundOffsetS,
                readings,
                estimate,
                settlements,
                places == null ? PlacedPoints.NONE : places,
                keys.rest()));
  }

  private static void refuseTwice(Keys keys, List<Reading> readings) throws JsonException {
    Set<String> readers = new HashSet<>();
    for (Reading reading : readings) {
      if (!readers.add(reading.reader())) {
        throw keys.fault("two readings by \"%s\"".formatted(reading.reader()));
      }
    }
  }

  private static void refuseSettledTwice(Keys keys, List<Settlement> all) throws JsonException {
    for (int i = 0; i < all.size(); i++) {
      Settlement each = all.get(i);
      if (all.subList(0, i).stream().anyMatch(e -> e.between(each.first(), each.second()))) {
        throw keys.fault(
            "two settlements of \"%s\" and \"%s\"".formatted(each.first(), each.second()));
      }
    }
  }

  private static ClipRef clip(Keys keys) throws JsonException {
    return new ClipRef(
        keys.text("path"),
        keys.parsed("sha256", TrialJson::sha256),
        keys.parsedOrNull("originalSha256", TrialJson::sha256),
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
    double fromS = keys.number("fromS", -MOST_S, MOST_S);
    double factor = keys.above0("factor", 1000);
    keys.refuseRest();
    return new TimeScale.Piece(fromS, factor);
  }

  /** Returns a reading's line, without what it was when it came with a pack. */
  public static String line(Reading reading) {
    return JsonText.line(MarksJson.write(reading.received(null)));
  }

  /** Returns the text of a trial's file. */
  public static String write(Trial trial) {
    ObjectNode file = FORMAT.begin();
    file.put("hand", trial.id().hand().code());
    file.put("block", trial.id().block());
    file.put("repeat", trial.id().repeat());
    file.set("clip", write(trial.clip()));
    Put.number(file, "fromS", trial.fromS());
    Put.number(file, "toS", trial.toS());
    file.put("mirrored", trial.mirrored().code());
    Put.number(file, "captureFps", trial.captureFps());
    ArrayNode pieces = file.putArray("timeScale");
    for (TimeScale.Piece piece : trial.timeScale().pieces()) {
      ObjectNode node = pieces.addObject();
      Put.number(node, "fromS", piece.fromS());
      Put.number(node, "factor", piece.factor());
    }
    Put.words(file, "timeScaleRefused", trial.timeScale().refusedWhy());
    Put.number(file, "paceSlapsPerS", trial.paceSlapsPerS());
    Put.number(file, "soundOffsetS", trial.soundOffsetS());
    ArrayNode readings = file.putArray("readings");
    trial.readings().forEach(reading -> readings.add(MarksJson.write(reading)));
    if (trial.estimate() != null) {
      file.set("estimate", EstimateJson.write(trial.estimate()));
    }
    if (!trial.settlements().isEmpty()) {
      ArrayNode settlements = file.putArray("settlements");
      trial.settlements().forEach(each -> settlements.add(SettlementJson.write(each)));
    }
    if (!trial.places().equals(PlacedPoints.NONE)) {
      file.set("places", PlacedJson.write(trial.places()));
    }
    return JsonText.page(Put.extra(file, trial.extra()));
  }

  private static ObjectNode write(ClipRef clip) {
    ObjectNode node = JsonText.object();
    node.put("path", clip.path());
    node.put("sha256", clip.sha256());
    Put.text(node, "originalSha256", clip.originalSha256());
    Put.number(node, "medianFrameS", clip.medianFrameS());
    return Put.extra(node, clip.extra());
  }
}
