package palmturn.trial;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * A trial as the program alone sees it. Times are media seconds on the picture's clock; rates are
 * in real time. What could not be told is null or empty, with the reason in {@code warnings}.
 *
 * @param basis what it was made from
 * @param findings contacts and faults, in order of time
 * @param figures speed, rhythm and rotation
 * @param traces curves that a person can check the findings against
 * @param limbs arms and hands, beside the contacts
 * @param warnings sentences for the reader
 * @param extra unknown keys
 */
public record Estimate(
    Basis basis,
    Findings findings,
    Figures figures,
    Traces traces,
    Limbs limbs,
    List<String> warnings,
    Extra extra) {

  /**
   * The clip and the sources that an estimate was made from.
   *
   * @param clipSha256 of the clip
   * @param sources allowed and at hand
   * @param fps frames a second, from the median distance of frames, media time
   * @param variableRate whether frames are unevenly spaced
   * @param captureFps frames a second at which it was captured, if the file or the user says so
   */
  public record Basis(
      String clipSha256,
      Set<Source> sources,
      double fps,
      boolean variableRate,
      @Nullable Double captureFps) {
    public Basis {
      sources = Set.copyOf(sources);
    }
  }

  /**
   * Contacts and faults.
   *
   * @param trialFound whether this looks like a trial at all
   * @param slaps contacts, in order
   * @param spans faults over a stretch, found by measuring
   * @param stretches of slapping, in order; one for an ordinary trial
   */
  public record Findings(
      boolean trialFound,
      List<EstimatedSlap> slaps,
      List<EstimatedSpan> spans,
      List<Stretch> stretches) {
    /** No trial. */
    public static final Findings NONE = new Findings(false, List.of(), List.of(), List.of());

    public Findings {
      slaps = List.copyOf(slaps);
      spans = List.copyOf(spans);
      stretches = List.copyOf(stretches);
    }
  }

  /**
   * Speed, rhythm and rotation, in real time.
   *
   * @param rateSlapsPerS doubles left out
   * @param intervalCvPct by one source of times, doubles and pauses left out
   * @param timingFloorPct the CV that the timing of the marks alone would give
   * @param rotation how often the hand turned there and back
   */
  public record Figures(
      @Nullable Double rateSlapsPerS,
      @Nullable Double intervalCvPct,
      @Nullable Double timingFloorPct,
      Rotation rotation) {
    /** None known. */
    public static final Figures UNKNOWN = new Figures(null, null, null, Rotation.UNKNOWN);
  }

  /**
   * Curves that a person can check the findings against, and where they were read.
   *
   * @param turn the turn of the hand over time, in its own unit: about +1 palm up, −1 palm down,
   *     the sign arbitrary while no side is known
   * @param sound strength of onsets in the sound over time, 1 = a strong one
   * @param soundOffsetS how much later the sound is than the picture, null where not known
   * @param handRegion where the moving hand was found, null where it was not
   */
  public record Traces(
      Curve turn, Curve sound, @Nullable Double soundOffsetS, @Nullable Region handRegion) {
    /** Nothing seen or heard. */
    public static final Traces NONE = new Traces(Curve.EMPTY, Curve.EMPTY, null, null);
  }

  /**
   * Arms and hands, beside the contacts.
   *
   * @param elbow how far the moving elbow strayed, null where it was not followed
   * @param shape what the landmarks told, null where they were not looked for or not found
   */
  public record Limbs(@Nullable ElbowPath elbow, @Nullable Shape shape) {
    /** Nothing followed. */
    public static final Limbs NONE = new Limbs(null, null);
  }

  /** A source of evidence for a finding. */
  public enum Source implements Coded {
    SOUND,
    MOTION,
    SHAPE
  }

  /**
   * The frequency of the hand's turns, there and back.
   *
   * @param frequencyHz turns/(2 × active time), null where not known
   * @param series frequency over time, Hz: one value for each pair of turns
   * @param spectrumHz the same from a Lomb-Scargle periodogram, a cross-check
   * @param autocorrelationHz the same from the autocorrelation of the turn, a cross-check
   */
  public record Rotation(
      @Nullable Double frequencyHz,
      Curve series,
      @Nullable Double spectrumHz,
      @Nullable Double autocorrelationHz) {
    /** Nothing known. */
    public static final Rotation UNKNOWN = new Rotation(null, Curve.EMPTY, null, null);
  }

  /**
   * The measurements by landmarks of hands and body, beside the slaps.
   *
   * @param wristBendDeg bend of the moving hand against its forearm at the contacts, degrees in the
   *     picture from what is usual for that side of the hand; empty where unknown
   * @param turnRange the hand's turns between contacts, null where unknown
   * @param targetElbow path of the target arm's elbow, null where it was not followed
   * @param elbowInSpace the moving elbow's displacement in space, null where unknown
   */
  public record Shape(
      Curve wristBendDeg,
      @Nullable TurnRange turnRange,
      @Nullable ElbowPath targetElbow,
      @Nullable ElbowInSpace elbowInSpace) {}

  /**
   * The moving elbow's displacement in space, if the hand stayed on the target.
   *
   * @param outwardFactor centimetres in space for each that the elbow goes out in the picture, 1 or
   *     more
   * @param outwardIsRight whether out is to the right of the picture
   * @param maxCm largest distance from its place
   * @param lowCm the same if the forearm is shorter in the picture by one standard deviation
   * @param highCm the same if it is longer
   */
  public record ElbowInSpace(
      double outwardFactor, boolean outwardIsRight, double maxCm, double lowCm, double highCm) {
    /** Returns the displacement of the elbow in space, in pixels of the picture. */
    public double distancePx(ElbowPath.Sample sample) {
      return distancePx(sample, outwardFactor, outwardIsRight);
    }

    /** Returns the same for another factor. */
    public static double distancePx(
        ElbowPath.Sample sample, double outwardFactor, boolean outwardIsRight) {
      boolean outwards = sample.rightPx() > 0 == outwardIsRight;
      return Math.hypot(
          outwards ? outwardFactor * sample.rightPx() : sample.rightPx(), sample.downPx());
    }
  }

  /**
   * The hand's turns from one contact to the next by its other side, both on the target's centre.
   *
   * @param deg of each turn, degrees, at half-way between its contacts
   * @param medianDeg their median
   * @param change from the first third of the trial to the last, null where one has too few turns
   */
  public record TurnRange(Curve deg, double medianDeg, @Nullable TurnChange change) {}

  /**
   * The change of the turn over a trial, with the 95 % confidence interval of the difference.
   *
   * @param firstThirdDeg mean of the first third, by time
   * @param lastThirdDeg mean of the last third
   * @param lowDeg lower end of last less first, degrees
   * @param highDeg upper end; under 0 where the turn shrank
   */
  public record TurnChange(
      double firstThirdDeg, double lastThirdDeg, double lowDeg, double highDeg) {
    /** Returns last less first, degrees. */
    public double deg() {
      return lastThirdDeg - firstThirdDeg;
    }
  }

  /**
   * A rectangle of the upright picture, pixels.
   *
   * @param x left edge
   * @param y upper edge
   * @param width to the right
   * @param height downwards
   */
  public record Region(double x, double y, double width, double height) {}

  /**
   * A fault over a stretch.
   *
   * @param kind what is wrong
   * @param startS first moment
   * @param endS last moment
   * @param confidence 0 to 1
   */
  public record EstimatedSpan(Span.SpanKind kind, double startS, double endS, double confidence) {
    public EstimatedSpan {
      if (!(endS > startS)) {
        throw new IllegalArgumentException(
            "a span must end after it starts: %s s to %s s".formatted(startS, endS));
      }
    }
  }

  /**
   * A stretch of time.
   *
   * @param startS first moment
   * @param endS last moment
   */
  public record Stretch(double startS, double endS) {}

  public Estimate {
    warnings = List.copyOf(warnings);
  }

  /** Returns the SHA-256 of the clip that it was made from. */
  public String clipSha256() {
    return basis.clipSha256();
  }

  /** Returns what it rests on. */
  public Set<Source> sources() {
    return basis.sources();
  }

  /** Returns whether this looks like a trial at all. */
  public boolean trialFound() {
    return findings.trialFound();
  }

  /** Returns the contacts, in order. */
  public List<EstimatedSlap> slaps() {
    return findings.slaps();
  }

  /** Returns the faults over a stretch. */
  public List<EstimatedSpan> spans() {
    return findings.spans();
  }

  /** Returns the stretches of slapping, in order. */
  public List<Stretch> stretches() {
    return findings.stretches();
  }

  /** Returns how much later the sound is than the picture, null where not known. */
  public @Nullable Double soundOffsetS() {
    return traces.soundOffsetS();
  }

  /** Returns where the moving hand was found, null where it was not. */
  public @Nullable Region handRegion() {
    return traces.handRegion();
  }

  /** Returns the path of the moving elbow, null where it was not followed. */
  public @Nullable ElbowPath elbow() {
    return limbs.elbow();
  }

  /** Returns what the landmarks told, null where they were not looked for or not found. */
  public @Nullable Shape shape() {
    return limbs.shape();
  }

  /**
   * Returns this estimate with every slap's side named, from the side of one: the slap nearest to a
   * moment. Without slaps, or where that slap's pose could not be told, it stays as it is.
   */
  public Estimate withKnownSide(double timeS, Side side) {
    int pose =
        slaps().stream()
            .min(Comparator.comparingDouble(slap -> Math.abs(slap.timeS() - timeS)))
            .map(EstimatedSlap::pose)
            .orElse(0);
    if (pose == 0 || side == Side.UNKNOWN) {
      return this;
    }
    Side other = side == Side.PALM ? Side.BACK : Side.PALM;
    return withSlaps(
        slaps().stream()
            .map(
                slap ->
                    slap.withSide(
                        slap.pose() == 0 ? Side.UNKNOWN : slap.pose() == pose ? side : other))
            .toList());
  }

  /**
   * Returns an open reading that starts from this estimate: every mark is unseen, and what could
   * not be told stays unknown.
   *
   * @param reader whose reading it is to be
   */
  public Reading toReading(String reader) {
    return new Reading(
        reader,
        false,
        StartedFrom.ESTIMATE,
        slaps().stream().map(EstimatedSlap::toSlap).toList(),
        spans().stream()
            .map(span -> new Span(span.kind(), span.startS(), span.endS(), "", Extra.NONE))
            .toList(),
        Extra.NONE);
  }

  /** Returns the moving elbow's displacement in space, null where unknown. */
  public @Nullable ElbowInSpace elbowInSpace() {
    return limbs.shape() == null ? null : limbs.shape().elbowInSpace();
  }

  /** Returns this estimate as one of another file, which shows the same film. */
  public Estimate forClip(String sha256) {
    Basis other =
        new Basis(sha256, basis.sources(), basis.fps(), basis.variableRate(), basis.captureFps());
    return new Estimate(other, findings, figures, traces, limbs, warnings, extra);
  }

  /** Returns this estimate with one sentence more for the reader. */
  public Estimate withWarning(String sentence) {
    List<String> more = new ArrayList<>(warnings);
    more.add(sentence);
    return new Estimate(basis, findings, figures, traces, limbs, more, extra);
  }

  /**
   * Returns this estimate without any figure that needs real time, and a sentence that says why.
   */
  public Estimate withoutSpeed(String why) {
    return new Estimate(basis, findings, Figures.UNKNOWN, traces, limbs, warnings, extra)
        .withWarning("Speed and rhythm can't be told: " + why + ".");
  }

  private Estimate withSlaps(List<EstimatedSlap> newSlaps) {
    Findings changed =
        new Findings(findings.trialFound(), newSlaps, findings.spans(), findings.stretches());
    return new Estimate(basis, changed, figures, traces, limbs, warnings, extra);
  }
}
