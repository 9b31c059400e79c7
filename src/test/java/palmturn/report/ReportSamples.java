package palmturn.report;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Random;
import java.util.function.UnaryOperator;
import javax.imageio.ImageIO;
import palmturn.advise.Evidence;
import palmturn.advise.Training;
import palmturn.chart.Samples;
import palmturn.json.DrillsJson;
import palmturn.json.LimitsJson;
import palmturn.measure.Limits;
import palmturn.measure.ReadingChoice;
import palmturn.measure.Scores;
import palmturn.measure.SessionScore;
import palmturn.trial.Block;
import palmturn.trial.ClipFacts;
import palmturn.trial.ClipRef;
import palmturn.trial.Drill;
import palmturn.trial.DrillHand;
import palmturn.trial.Extra;
import palmturn.trial.Hand;
import palmturn.trial.Message;
import palmturn.trial.Mirrored;
import palmturn.trial.Reading;
import palmturn.trial.Session;
import palmturn.trial.Side;
import palmturn.trial.Slap;
import palmturn.trial.Span;
import palmturn.trial.StartedFrom;
import palmturn.trial.TimeScale;
import palmturn.trial.TimedBy;
import palmturn.trial.Trial;
import palmturn.trial.TrialId;
import palmturn.trial.Zone;

/** Invented sessions of an invented athlete. */
final class ReportSamples {
  private static final Instant MADE = Instant.parse("2026-11-16T14:05:00Z");

  private ReportSamples() {}

  /** Returns two blocks of three trials a hand, the left hand slower and less clean. */
  static ReportInput twoBlocks() {
    List<ReportInput.Filmed> trials = new ArrayList<>();
    for (String block : List.of("baseline", "after-1")) {
      for (int repeat = 1; repeat <= 3; repeat++) {
        for (Hand hand : Hand.values()) {
          trials.add(filmed(new TrialId(hand, block, repeat)));
        }
      }
    }
    return input(session("H-07", "steady, please"), trials);
  }

  /** Returns a session whose every free text is markup. */
  static ReportInput hostile() {
    return hostile("<script>alert('x')</script>\"'&");
  }

  /** Returns a session whose every free text is the same. */
  static ReportInput hostile(String bad) {
    Trial trial = trial(new TrialId(Hand.RIGHT, "baseline", 1), bad + "/" + bad + ".mp4");
    Reading reading =
        new Reading(
            bad,
            false,
            new StartedFrom(StartedFrom.Origin.READER, bad),
            List.of(
                mark(1, Side.PALM, Zone.CENTRE),
                mark(1.2, Side.BACK, Zone.FINGERS).withNote(bad),
                mark(1.4, Side.PALM, Zone.CENTRE).withKind(Slap.Kind.OTHER).withNote(bad)),
            List.of(new Span(Span.SpanKind.ELBOW_OUT, 1.1, 1.3, bad, Extra.NONE)),
            Extra.NONE);
    ClipFacts clip = clip(640, 480, 60, true, List.of(bad));
    return input(session(bad, bad), List.of(new ReportInput.Filmed(trial, reading, clip)));
  }

  /** Returns one trial with marks and an estimate, and one that is only estimated. */
  static ReportInput estimated() {
    Trial read = trial(new TrialId(Hand.RIGHT, "baseline", 1), "clips/r.mp4");
    Trial unread = trial(new TrialId(Hand.LEFT, "baseline", 1), "clips/l.mp4");
    ClipFacts clip = clip(1280, 720, 60, true, List.of());
    return input(
        session("H-07", "steady, please"),
        List.of(
            new ReportInput.Filmed(
                read.withEstimate(Samples.estimate()), Samples.everyKind(), clip),
            new ReportInput.Filmed(unread.withEstimate(Samples.estimate()), null, clip)));
  }

  /** Returns a session of which much is open and to which the coach says much. */
  static ReportInput muchOpen() {
    List<ReportInput.Filmed> trials = new ArrayList<>(twoBlocks().trials());
    TrialId first = trials.get(0).trial().id();
    trials.set(
        0,
        filmed(
            first,
            reading ->
                reading.withSlaps(
                    reading.slaps().stream()
                        .map(slap -> slap.withSeen(false).withKind(Slap.Kind.OTHER))
                        .toList())));
    trials.set(1, filmed(trials.get(1).trial().id(), reading -> reading.withSlaps(List.of())));
    trials.set(2, new ReportInput.Filmed(trials.get(2).trial(), null, trials.get(2).clip()));
    trials.set(9, new ReportInput.Filmed(trials.get(9).trial(), null, trials.get(9).clip()));
    Session session = session("H-07", "none");
    Session.Facts facts = session.facts();
    Message long1 =
        new Message(
            "coach",
            MADE,
            null,
            null,
            "Take your time with the left hand, and let the elbow rest at the side. ".repeat(20)
                + "That is all.",
            Extra.NONE);
    return input(
        session
            .withMessages(List.of(long1))
            .withFacts(
                new Session.Facts(
                    facts.racketHand(),
                    facts.forearmCm(),
                    facts.handCm(),
                    null,
                    "none",
                    false,
                    "phone",
                    facts.club())),
        trials);
  }

  /** Returns a session in which nothing can be told. */
  static ReportInput nothing() {
    Trial trial = trial(new TrialId(Hand.LEFT, "baseline", 1), "clips/left.mp4");
    Reading empty = Reading.begin("A", StartedFrom.NOTHING);
    return input(
        session("H-08", "none"),
        List.of(
            new ReportInput.Filmed(trial, empty, null),
            new ReportInput.Filmed(
                trial(new TrialId(Hand.RIGHT, "baseline", 1), "clips/r.mp4"), null, null)));
  }

  /** Returns a session of trials that are made as in {@link #twoBlocks}. */
  static ReportInput of(ReportInput.Filmed... filmed) {
    return input(session("H-07", "steady, please"), List.of(filmed));
  }

  /** Returns the same session with other messages. */
  static ReportInput withMessages(ReportInput input, Message... messages) {
    return input(input.session().withMessages(List.of(messages)), input.trials());
  }

  /** Returns the same session with every reading finished. */
  static ReportInput read(ReportInput input) {
    return input(
        input.session(),
        input.trials().stream()
            .map(
                each ->
                    new ReportInput.Filmed(
                        each.trial(),
                        Objects.requireNonNull(each.reading()).withFinished(true),
                        each.clip()))
            .toList());
  }

  /** Returns a trial whose reading was changed. */
  static ReportInput.Filmed filmed(TrialId id, UnaryOperator<Reading> change) {
    ReportInput.Filmed made = filmed(id);
    return new ReportInput.Filmed(
        made.trial(), change.apply(Objects.requireNonNull(made.reading())), made.clip());
  }

  private static ReportInput input(Session session, List<ReportInput.Filmed> filmed) {
    List<Trial> trials =
        filmed.stream()
            .filter(each -> each.reading() != null)
            .map(each -> each.trial().withReading(each.reading()))
            .toList();
    Limits limits = LimitsJson.standard();
    SessionScore score = Scores.session(session, trials, ReadingChoice.FIRST, limits);
    return new ReportInput(
        session,
        filmed,
        score,
        limits,
        Training.of(Evidence.of(score, limits), DrillsJson.standard()),
        null,
        (trial, timeS) -> still(timeS),
        MADE);
  }

  private static Session session(String athlete, String text) {
    Session session = Session.begin(athlete, LocalDate.of(2026, 11, 14));
    Block drilled =
        new Block(
            "after-1",
            new Drill("paced-flips", DrillHand.LEFT, "five sets of 20", null, null, Extra.NONE),
            Extra.NONE);
    return session
        .withBlocks(List.of(session.blocks().get(0), drilled))
        .withFacts(
            new Session.Facts(
                Hand.RIGHT, 24.5, null, null, text, true, "phone", "Quillmere Badminton Club"))
        .withMessages(
            List.of(
                new Message(
                    "coach",
                    Instant.parse("2026-11-15T09:30:00Z"),
                    new TrialId(Hand.LEFT, "baseline", 1),
                    2.4,
                    "Look at the elbow here: " + text,
                    Extra.NONE)));
  }

  static ReportInput.Filmed filmed(TrialId id) {
    Random random = new Random(id.name().hashCode());
    double meanS = id.hand() == Hand.LEFT ? 0.218 : 0.193;
    double sdS = id.hand() == Hand.LEFT ? 0.014 : 0.009;
    double wrong = id.hand() == Hand.LEFT ? 0.36 : 0.15;
    List<Slap> slaps = new ArrayList<>();
    double at = 0.9;
    for (int i = 0; at < 6.2; i++) {
      double frameS = Math.ceil(at * 60) / 60;
      Slap slap = mark(frameS, i % 2 == 0 ? Side.PALM : Side.BACK, Zone.CENTRE);
      if (random.nextDouble() < wrong) {
        Zone[] zones = {Zone.FINGERS, Zone.WRIST, Zone.EDGE};
        slap = slap.withZone(zones[random.nextInt(3)]);
      }
      slaps.add(slap);
      if (random.nextDouble() < 0.04) {
        slaps.add(mark(frameS + 0.067, slap.side(), Zone.CENTRE).withKind(Slap.Kind.DOUBLE));
      }
      at += (meanS + sdS * random.nextGaussian()) * (1 + 0.002 * i);
    }
    List<Span> spans =
        id.repeat() == 2
            ? List.of(new Span(Span.SpanKind.ELBOW_OUT, 3.1, 3.7, "", Extra.NONE))
            : List.of();
    Reading reading =
        new Reading("B. Marsh", id.repeat() < 3, StartedFrom.NOTHING, slaps, spans, Extra.NONE);
    ClipFacts clip =
        clip(
            1280,
            720,
            59.94,
            id.repeat() < 3,
            id.repeat() < 3
                ? List.of()
                : List.of(
                    "Under 100 frames a second without usable sound: rhythm is only an upper bound."));
    return new ReportInput.Filmed(trial(id, "clips/" + id.name() + ".mp4"), reading, clip);
  }

  private static ClipFacts clip(
      int width, int height, double fps, boolean sound, List<String> warnings) {
    return new ClipFacts(
        "clip.mp4",
        "0".repeat(64),
        "mp4",
        "h264",
        width,
        height,
        0,
        420,
        0,
        7,
        fps,
        fps,
        false,
        null,
        sound ? new ClipFacts.Sound("aac", 48000, 1, 0.0) : null,
        false,
        warnings,
        1 / fps,
        false);
  }

  private static Trial trial(TrialId id, String path) {
    return new Trial(
        id,
        new ClipRef(path, "0".repeat(64), 1 / 60.0, Extra.NONE),
        null,
        null,
        Mirrored.FALSE,
        null,
        TimeScale.REAL,
        null,
        null,
        List.of(),
        null,
        Extra.NONE);
  }

  private static Slap mark(double timeS, Side side, Zone zone) {
    return new Slap(
        Slap.Kind.SLAP,
        timeS,
        side,
        zone,
        TimedBy.PICTURE,
        1 / 60.0,
        timeS,
        null,
        true,
        "",
        Extra.NONE);
  }

  private static byte[] still(double timeS) {
    BufferedImage image = new BufferedImage(320, 180, BufferedImage.TYPE_INT_RGB);
    Graphics2D g = image.createGraphics();
    g.setColor(Color.getHSBColor((float) (timeS / 7), 0.3f, 0.6f));
    g.fillRect(0, 0, 320, 180);
    g.setColor(Color.WHITE);
    g.fillOval(120, 60, 80, 60);
    try (ByteArrayOutputStream out = new ByteArrayOutputStream()) {
      ImageIO.write(image, "jpeg", out);
      return out.toByteArray();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
