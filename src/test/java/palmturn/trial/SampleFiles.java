package palmturn.trial;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.Set;

/** Sessions and trials with every key filled, and random ones, for the rooms that write files. */
public final class SampleFiles {
  public static final TrialId RIGHT = new TrialId(Hand.RIGHT, Block.BASELINE, 1);
  public static final String SHA = "0123456789abcdef".repeat(4);

  private SampleFiles() {}

  /** Returns a session with every key filled. */
  public static Session fullSession() {
    Instant at = Instant.parse("2026-05-01T10:00:00Z");
    return new Session(
        "H-07",
        LocalDate.of(2026, 5, 1),
        new Session.Facts(
            Hand.RIGHT, 25.5, 18.5, 172.0, "none", true, "phone, 60 frames a second", "Quillmere"),
        5.5,
        List.of(
            new Block(Block.BASELINE, null, Extra.NONE),
            new Block(
                "after-1",
                new Drill(
                    "paced-flips", DrillHand.LEFT, "3 × 20", at, at.plusSeconds(300), Extra.NONE),
                Extra.NONE)),
        List.of(RIGHT, new TrialId(Hand.LEFT, "after-1", 2)),
        List.of(
            new Message("H-07", at, null, null, "Felt uneven.\n\"Truly\" – ünëven.", Extra.NONE),
            new Message("coach", at.plusMillis(1), RIGHT, 2.5, "Look here.", Extra.NONE)),
        Extra.NONE);
  }

  /** Returns a trial with every key filled. */
  public static Trial fullTrial() {
    Slap sound =
        new Slap(
            Slap.Kind.OTHER,
            1.25,
            Side.BACK,
            Zone.EDGE,
            TimedBy.SOUND,
            0.001,
            1.2666,
            1.2512345678901234,
            false,
            "thumb first",
            Extra.NONE);
    Reading reading =
        new Reading(
            "AB",
            true,
            new StartedFrom(StartedFrom.Origin.READER, "C D"),
            List.of(Slap.onFrame(Slap.Kind.SLAP, 1.0, 1 / 60.0, Side.PALM, Zone.CENTRE), sound),
            List.of(new Span(Span.SpanKind.ELBOW_OUT, 1.1, 1.9, "far", Extra.NONE)),
            Extra.NONE);
    return new Trial(
        RIGHT,
        new ClipRef("clips/right.mp4", SHA, 1 / 60.0, Extra.NONE),
        0.5,
        6.5,
        Mirrored.FALSE,
        240.0,
        new TimeScale(List.of(new TimeScale.Piece(0, 1), new TimeScale.Piece(2, 0.25)), "in part"),
        3.6,
        -0.012,
        List.of(reading, Reading.begin("EF", StartedFrom.ESTIMATE)),
        null,
        Extra.NONE);
  }

  /** Returns a trial in which two readings, and a reading and the estimate, are being settled. */
  public static Trial settledTrial() {
    Instant at = Instant.parse("2026-05-02T09:30:00Z");
    Slap first = Slap.onFrame(Slap.Kind.SLAP, 1.0, 1 / 60.0, Side.PALM, Zone.CENTRE);
    Span span = new Span(Span.SpanKind.ELBOW_OUT, 1.1, 1.9, "far", Extra.NONE);
    Settlement readers =
        Settlement.begin("AB", "EF")
            .withTerms(0.04, true)
            .plusSlap(
                new Decision<>(
                    Decision.Choice.NEITHER,
                    "QM",
                    at,
                    "both a frame late",
                    first,
                    first.withSide(Side.BACK),
                    Slap.onFrame(Slap.Kind.DOUBLE, 0.98, 1 / 60.0, Side.BACK, Zone.EDGE),
                    Extra.NONE))
            .plusSlap(
                new Decision<>(Decision.Choice.OPEN, "QM", at, "", null, first, null, Extra.NONE))
            .plusSpan(
                new Decision<>(Decision.Choice.FIRST, "QM", at, "", span, null, null, Extra.NONE));
    Trial trial = fullTrial().withEstimate(fullEstimate());
    return trial
        .withReading(trial.readings().get(0).withEstimateSeen(true).withReopenedAt(List.of(at)))
        .withSettlement(readers)
        .withSettlement(Settlement.begin("EF", Settlement.ESTIMATE));
  }

  /** Returns an estimate with every key filled. */
  public static Estimate fullEstimate() {
    return fullEstimate(SHA);
  }

  /** Returns the same, of a clip with another content. */
  public static Estimate fullEstimate(String clipSha256) {
    EstimatedSlap heard =
        new EstimatedSlap(
            new EstimatedSlap.Timing(1.0123456789012345, TimedBy.SOUND, 0.001, 1.0151, 1.0158),
            new EstimatedSlap.EstimatedSide(1, Side.PALM, 0.93),
            EstimatedSlap.EstimatedZone.UNKNOWN,
            false,
            Set.of(Estimate.Source.SOUND, Estimate.Source.MOTION),
            0.97,
            "");
    EstimatedSlap seen =
        new EstimatedSlap(
            EstimatedSlap.Timing.seen(1.2, 1 / 60.0),
            new EstimatedSlap.EstimatedSide(-1, Side.BACK, 0.8),
            new EstimatedSlap.EstimatedZone(Zone.FINGERS, 0.6),
            false,
            Set.of(Estimate.Source.MOTION),
            0.5,
            "no onset near it");
    EstimatedSlap again =
        new EstimatedSlap(
            EstimatedSlap.Timing.seen(1.3, 1 / 60.0),
            new EstimatedSlap.EstimatedSide(-1, Side.BACK, 0.8),
            EstimatedSlap.EstimatedZone.UNKNOWN,
            true,
            Set.of(Estimate.Source.MOTION),
            0.5,
            "");
    return new Estimate(
        new Estimate.Basis(
            clipSha256, Set.of(Estimate.Source.SOUND, Estimate.Source.MOTION), 59.94, true, 240.0),
        new Estimate.Findings(
            true,
            List.of(heard, seen, again),
            List.of(new Estimate.EstimatedSpan(Span.SpanKind.ELBOW_OUT, 0.95, 1.1, 0.7)),
            List.of(new Estimate.Stretch(1.0123, 1.3))),
        new Estimate.Figures(
            5.1234567890123456,
            4.25,
            0.5,
            new Estimate.Rotation(
                2.56, new Curve(List.of(1.1, 1.3), List.of(2.5, 2.6125)), 2.5, 2.625)),
        new Estimate.Traces(
            new Curve(List.of(0.9, 0.908333, 0.916667), List.of(-1.0, 0.0, 1.25)),
            new Curve(List.of(0.0, 0.0025), List.of(0.0, 0.9999)),
            0.0035,
            new Estimate.Region(300, 200, 80.5, 60)),
        new Estimate.Limbs(
            new ElbowPath(
                1.0,
                0.04,
                new ElbowPath.PictureScale("given", 0.1, 250.0),
                new Point(120.5, 190.25),
                List.of(
                    new ElbowPath.Sample(0.9, 0.0, 0.0, 0.0),
                    new ElbowPath.Sample(1.0, 6.0, 8.0, 10.0),
                    new ElbowPath.Sample(1.2, -3.0, 4.0, 5.0)),
                List.of(new Estimate.Stretch(1.0, 1.2)),
                List.of(new ElbowPath.GapEstimate(1.1, 2.5, 6.25, 3.125))),
            new Estimate.Shape(
                new Curve(List.of(1.1, 1.3), List.of(-3.5, 21.25)),
                new Estimate.TurnRange(
                    new Curve(List.of(1.2), List.of(171.5)),
                    171.5,
                    new Estimate.TurnChange(172, 140.25, -38, -25.5)),
                null,
                new Estimate.ElbowInSpace(1.25, true, 1.1, 1, 1.25))),
        List.of("The sound of \"a\" door was set aside.", "Zones are not told."),
        Extra.NONE);
  }

  /** Returns an estimate that found nothing. */
  public static Estimate emptyEstimate() {
    return new Estimate(
        new Estimate.Basis(SHA, Set.of(), 25, false, null),
        Estimate.Findings.NONE,
        Estimate.Figures.UNKNOWN,
        Estimate.Traces.NONE,
        Estimate.Limbs.NONE,
        List.of("No hand turns here."),
        Extra.NONE);
  }

  /** Returns places with every one pointed at. */
  public static PlacedPoints fullPlaces() {
    return new PlacedPoints(
        new Estimate.Region(100, 120.5, 200, 160),
        new Point(412.5, 300),
        new Point(320, 210),
        new KnownLength(new Point(412, 300), new Point(220, 280), 25.5),
        new Point(200, 240),
        Extra.NONE);
  }

  /** Returns a trial without readings. */
  public static Trial plainTrial(TrialId id, String clipPath, String sha256) {
    return new Trial(
        id,
        new ClipRef(clipPath, sha256, 1 / 60.0, Extra.NONE),
        null,
        null,
        Mirrored.UNKNOWN,
        null,
        TimeScale.REAL,
        null,
        null,
        List.of(),
        null,
        Extra.NONE);
  }

  /** Returns a trial without readings, whose clip nobody looks for. */
  public static Trial plainTrial(TrialId id) {
    return plainTrial(id, "clips/right.mp4", SHA);
  }

  /** Returns a reading with random marks. */
  public static Reading randomReading(String reader, int marks, Random random) {
    List<Slap> slaps = new ArrayList<>();
    for (int i = 0; i < marks; i++) {
      slaps.add(
          new Slap(
              any(Slap.Kind.values(), random),
              random.nextDouble() * 10 - 1,
              any(Side.values(), random),
              any(Zone.values(), random),
              any(TimedBy.values(), random),
              random.nextDouble() / 30,
              random.nextBoolean() ? null : random.nextDouble(),
              random.nextBoolean() ? null : random.nextDouble() * 1e-7,
              random.nextBoolean(),
              random.nextBoolean() ? "" : words(random),
              Extra.NONE));
    }
    return new Reading(
        reader, random.nextBoolean(), StartedFrom.NOTHING, slaps, List.of(), Extra.NONE);
  }

  private static <E> E any(E[] values, Random random) {
    return values[random.nextInt(values.length)];
  }

  /** Returns text with all that JSON must escape, line breaks and all planes of Unicode. */
  private static String words(Random random) {
    StringBuilder text = new StringBuilder("x");
    for (int i = random.nextInt(12); i > 0; i--) {
      int c = random.nextInt(0x500);
      text.appendCodePoint(random.nextInt(8) == 0 ? 0x1F44F : c);
    }
    return text.toString();
  }
}
