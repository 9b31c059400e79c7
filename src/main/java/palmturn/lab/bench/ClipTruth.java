package palmturn.lab.bench;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;
import palmturn.json.JsonException;
import palmturn.json.JsonText;
import palmturn.trial.Coded;
import palmturn.trial.Hand;
import palmturn.trial.Side;
import palmturn.trial.Span;
import palmturn.trial.Zone;

/**
 * The truth of a clip, read from the file beside it: the program's own form, and a plain one with
 * snake_case keys that other renderers write.
 *
 * @param hand the moving hand, the athlete's own
 * @param mirrored whether the picture shows the athlete mirrored
 * @param contacts every contact, in order of time
 * @param bentWrist stretches with the wrist bent, in order of time
 * @param bend of the moving hand against its forearm all along, over 0 to the palm, where it is
 *     told
 * @param turn of the moving hand about its forearm all along, where it is told
 * @param elbow the displacement of the moving elbow in the picture plane, where it is told
 */
public record ClipTruth(
    Hand hand,
    boolean mirrored,
    List<TrueContact> contacts,
    List<BentStretch> bentWrist,
    @Nullable AngleSeries bend,
    @Nullable AngleSeries turn,
    @Nullable ElbowDisplacement elbow) {
  /** The bend that counts as a bent wrist in the plain form, which names no stretches. */
  private static final double BENT_DEG = 10;

  /** The least length of such a stretch; a shorter one is part of a turn. */
  private static final double BENT_S = 0.3;

  /**
   * One contact.
   *
   * @param timeS its exact moment on the picture's clock
   * @param side side of the hand that touched
   * @param zone where it touched; {@code UNKNOWN} where that is not told
   * @param isDouble whether it is a second contact without a turn between
   */
  public record TrueContact(double timeS, Side side, Zone zone, boolean isDouble) {}

  /**
   * A stretch of time.
   *
   * @param startS its first moment on the picture's clock
   * @param endS its last moment
   */
  public record BentStretch(double startS, double endS) {}

  /**
   * An angle over time.
   *
   * @param firstS moment of the first value
   * @param hz values a second
   * @param deg values, at least one
   */
  public record AngleSeries(double firstS, double hz, double[] deg) {
    public AngleSeries {
      if (deg.length == 0) {
        throw new IllegalArgumentException("an angle needs a value");
      }
    }

    /** Returns the value next to a moment, degrees. */
    public double at(double timeS) {
      long at = Math.round((timeS - firstS) * hz);
      return deg[(int) Math.max(0, Math.min(deg.length - 1, at))];
    }

    /** Returns the largest bend to either side in a stretch, 0 where there is no value in it. */
    public double largestDeg(BentStretch in) {
      double most = 0;
      for (int i = 0; i < deg.length; i++) {
        double timeS = firstS + i / hz;
        if (timeS >= in.startS() && timeS <= in.endS()) {
          most = Math.max(most, Math.abs(deg[i]));
        }
      }
      return most;
    }

    private List<BentStretch> bentStretches() {
      List<BentStretch> stretches = new ArrayList<>();
      int first = -1;
      for (int i = 0; i <= deg.length; i++) {
        boolean bent = i < deg.length && Math.abs(deg[i]) > BENT_DEG;
        if (bent && first < 0) {
          first = i;
        } else if (!bent && first >= 0) {
          if (i - first >= BENT_S * hz) {
            stretches.add(new BentStretch(firstS + first / hz, firstS + i / hz));
          }
          first = -1;
        }
      }
      return stretches;
    }
  }

  /**
   * The elbow's place and its displacement over time.
   *
   * @param xPx its place in the first upright picture
   * @param yPx the same, downwards
   * @param cmPerPixel at the elbow, in the first picture
   * @param timesS rising
   * @param rightCm displacement to the right from its place before the first slap
   * @param upCm the same, upwards
   */
  public record ElbowDisplacement(
      double xPx,
      double yPx,
      double cmPerPixel,
      double[] timesS,
      double[] rightCm,
      double[] upCm) {}

  public ClipTruth {
    contacts = contacts.stream().sorted(Comparator.comparingDouble(TrueContact::timeS)).toList();
    bentWrist = bentWrist.stream().sorted(Comparator.comparingDouble(BentStretch::startS)).toList();
  }

  /**
   * Reads either form.
   *
   * @throws JsonException if the text is damaged or is neither
   */
  public static ClipTruth read(String text) throws JsonException {
    if (!(JsonText.parse(text) instanceof ObjectNode file)) {
      throw new JsonException("$: must be an object");
    }
    try {
      return file.path("format").asText().equals("palmturn-truth") ? own(file) : plain(file);
    } catch (IllegalArgumentException e) {
      throw new JsonException("$: " + e.getMessage());
    }
  }

  private static ClipTruth own(ObjectNode file) {
    List<TrueContact> contacts = new ArrayList<>();
    for (JsonNode each : wanted(file, "contacts")) {
      String kind = wanted(each, "kind").asText();
      if (!kind.equals("missed")) {
        contacts.add(
            new TrueContact(number(each, "timeS"), side(each), zone(each), kind.equals("double")));
      }
    }
    return new ClipTruth(
        hand(wanted(file, "parameters"), "hand"),
        false,
        contacts,
        ownStretches(file),
        angle(file, "bentWristDeg", 0, "seriesHz"),
        angle(file, "rotationDeg", 0, "seriesHz"),
        file.has("elbowPx") ? ownElbow(file) : null);
  }

  private static List<BentStretch> ownStretches(ObjectNode file) {
    List<BentStretch> stretches = new ArrayList<>();
    for (JsonNode each : file.path("spans")) {
      if (wanted(each, "kind").asText().equals(Span.SpanKind.BENT_WRIST.code())) {
        stretches.add(new BentStretch(number(each, "startS"), number(each, "endS")));
      }
    }
    return stretches;
  }

  private static ElbowDisplacement ownElbow(ObjectNode file) {
    JsonNode place = wanted(file, "elbowPx");
    double[] rightCm = numbers(file, "elbowRightCm");
    double hz = number(file, "seriesHz");
    double[] timesS = new double[rightCm.length];
    for (int i = 0; i < timesS.length; i++) {
      timesS[i] = i / hz;
    }
    return new ElbowDisplacement(
        place.path(0).asDouble(),
        place.path(1).asDouble(),
        number(file, "cmPerPixel"),
        timesS,
        rightCm,
        numbers(file, "elbowUpCm"));
  }

  private static ClipTruth plain(ObjectNode file) {
    List<TrueContact> contacts = new ArrayList<>();
    for (JsonNode each : wanted(file, "contacts")) {
      contacts.add(
          new TrueContact(
              number(each, "t_s"), side(each), zone(each), each.path("double").asBoolean()));
    }
    double firstS = file.path("series_t0_s").asDouble();
    AngleSeries bend = angle(file, "bent_wrist_deg", firstS, "series_hz");
    return new ClipTruth(
        hand(file, "moving_hand"),
        file.path("mirrored").asBoolean(),
        contacts,
        bend == null ? List.of() : bend.bentStretches(),
        bend,
        angle(file, "rotation_deg", firstS, "series_hz"),
        file.has("elbow_px_per_frame") ? plainElbow(file) : null);
  }

  private static @Nullable AngleSeries angle(
      ObjectNode file, String key, double firstS, String hz) {
    return file.path(key).isEmpty()
        ? null
        : new AngleSeries(firstS, number(file, hz), numbers(file, key));
  }

  private static ElbowDisplacement plainElbow(ObjectNode file) {
    double[] timesS = numbers(file, "frame_times_s");
    double[] scale = numbers(file, "cm_per_px_at_elbow_per_frame");
    JsonNode places = wanted(file, "elbow_px_per_frame");
    double[] rightCm = new double[timesS.length];
    double[] upCm = new double[timesS.length];
    for (int i = 0; i < timesS.length; i++) {
      rightCm[i] =
          (places.path(i).path(0).asDouble() - places.path(0).path(0).asDouble()) * scale[i];
      upCm[i] = (places.path(0).path(1).asDouble() - places.path(i).path(1).asDouble()) * scale[i];
    }
    return new ElbowDisplacement(
        places.path(0).path(0).asDouble(),
        places.path(0).path(1).asDouble(),
        scale[0],
        timesS,
        rightCm,
        upCm);
  }

  private static Side side(JsonNode node) {
    return Coded.parse(Side.class, wanted(node, "side").asText());
  }

  private static Zone zone(JsonNode node) {
    return node.has("zone") ? Coded.parse(Zone.class, wanted(node, "zone").asText()) : Zone.UNKNOWN;
  }

  private static Hand hand(JsonNode node, String key) {
    return Coded.parse(Hand.class, wanted(node, key).asText());
  }

  private static double number(JsonNode node, String key) {
    JsonNode value = wanted(node, key);
    if (!value.isNumber()) {
      throw new IllegalArgumentException(key + " must be a number");
    }
    return value.doubleValue();
  }

  private static double[] numbers(JsonNode node, String key) {
    JsonNode list = wanted(node, key);
    double[] numbers = new double[list.size()];
    for (int i = 0; i < numbers.length; i++) {
      numbers[i] = list.get(i).asDouble();
    }
    return numbers;
  }

  private static JsonNode wanted(JsonNode node, String key) {
    JsonNode value = node.get(key);
    if (value == null || value.isNull()) {
      throw new IllegalArgumentException(key + " is missing");
    }
    return value;
  }
}
