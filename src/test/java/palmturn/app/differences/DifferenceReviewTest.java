package palmturn.app.differences;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.concurrent.CompletableFuture;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;
import palmturn.app.tasks.Tasks;
import palmturn.clip.FrameTable;
import palmturn.clip.FrameTables;
import palmturn.clip.Picture;
import palmturn.settle.Difference.What;
import palmturn.trial.ClipRef;
import palmturn.trial.Decision;
import palmturn.trial.Extra;
import palmturn.trial.Hand;
import palmturn.trial.Mirrored;
import palmturn.trial.PlacedPoints;
import palmturn.trial.Reading;
import palmturn.trial.Settlement;
import palmturn.trial.Side;
import palmturn.trial.Slap;
import palmturn.trial.Span;
import palmturn.trial.StartedFrom;
import palmturn.trial.TimeScale;
import palmturn.trial.Trial;
import palmturn.trial.TrialId;
import palmturn.trial.Zone;

class DifferenceReviewTest {
  private static final double FRAME_S = 1.0 / 60;
  private static final Instant NOW = Instant.parse("2026-11-14T10:00:00Z");

  private final FrameTable frames = FrameTables.steady(600, 60);
  private final List<Settlement> kept = new ArrayList<>();
  private final List<String> said = new ArrayList<>();
  private boolean readOnly;
  private String initials = "QM";
  private final DifferenceReview differences =
      new DifferenceReview(
          Tasks.direct(),
          Runnable::run,
          new ReviewContext() {
            @Override
            public boolean readOnly() {
              return readOnly;
            }

            @Override
            public void reportReadOnly() {
              said.add("read-only");
            }

            @Override
            public void askReviewer(Consumer<String> then) {
              if (!initials.isEmpty()) {
                then.accept(initials);
              }
            }

            @Override
            public Instant now() {
              return NOW;
            }

            @Override
            public void save(Trial trial, Settlement settlement) {
              kept.add(settlement);
            }

            @Override
            public void report(String words) {
              said.add(words);
            }

            @Override
            public void reportError(Exception problem) {
              said.add(problem.getMessage());
            }
          });

  @Test
  void whatChangesACountComesFirstThenSideStretchZoneAndTime() {
    List<Slap> a = even(12);
    List<Slap> b = new ArrayList<>(a);
    b.set(1, at(a.get(1), a.get(1).timeS() + 0.06));
    b.set(3, a.get(3).withZone(Zone.EDGE));
    b.set(5, a.get(5).withSide(Side.PALM));
    b.set(7, a.get(7).withKind(Slap.Kind.DOUBLE));
    b.remove(9);
    open(reading("A", true, a, span(1.2, 2)), reading("B", true, b));

    assertEquals(
        List.of(What.ONLY_A, What.DOUBLE, What.SIDE, What.ONLY_A, What.ZONE, What.APART),
        differences.itemsProperty().get().stream().map(ReviewItem::mainDifference).toList());
    assertTrue(differences.itemsProperty().get().get(3) instanceof ReviewItem.OfSpan);
  }

  @Test
  void eachKeyDecidesIsKeptAndGoesOnAndTheEndSaysSettled() {
    openThree();
    differences.choose(Decision.Choice.FIRST);
    differences.choose(Decision.Choice.SECOND);
    assertEquals(2, differences.positionProperty().get());
    assertEquals(2, differences.decidedCount());
    differences.choose(Decision.Choice.SECOND);

    assertNull(differences.current());
    assertEquals(3, kept.size());
    Settlement last = kept.get(2);
    assertEquals("QM", last.slaps().get(0).by());
    assertEquals(NOW, last.slaps().get(0).at());
    assertNotNull(last.slaps().get(0).a(), "what both said");
    assertEquals(0, differences.settledProperty().get().open());
    assertTrue(differences.settledProperty().get().reading().finished());
  }

  @Test
  void leftOpenIsKeptAsSuchAndFoundAgainFromTheEnd() {
    openThree();
    differences.goForward();
    differences.choose(Decision.Choice.FIRST);
    differences.choose(Decision.Choice.FIRST);
    assertNull(differences.current());
    assertEquals(1, differences.settledProperty().get().open());
    assertEquals(Decision.Choice.OPEN, kept.get(0).slaps().get(0).choice());
    differences.goForward();
    assertEquals(0, differences.positionProperty().get());
    int before = kept.size();
    differences.goForward();
    assertEquals(before, kept.size(), "left open once is enough");
  }

  @Test
  void goingBackAndOnLeavesDecisionsAlone() {
    openThree();
    differences.choose(Decision.Choice.FIRST);
    differences.goBack();
    assertEquals(0, differences.positionProperty().get());
    differences.goForward();
    assertEquals(1, differences.positionProperty().get());
    assertEquals(1, kept.size());
    differences.goBack();
    differences.reopen();
    assertEquals(0, differences.positionProperty().get());
    assertTrue(differences.current().open());
  }

  @Test
  void undoTakesTheLastDecisionBackThereAndRedoMakesItAgain() {
    openThree();
    Settlement nothing = Settlement.begin("A", "B");
    differences.choose(Decision.Choice.FIRST);
    differences.choose(Decision.Choice.SECOND);
    differences.undo();
    assertEquals(1, differences.positionProperty().get());
    assertEquals(kept.get(0), kept.get(2));
    differences.undo();
    assertEquals(0, differences.positionProperty().get());
    assertEquals(nothing, kept.get(3));
    differences.redo();
    assertEquals(kept.get(0), kept.get(4));
  }

  @Test
  void markMadeAfreshLiesOnTheFrameShownAndStandsInsteadOfBoth() {
    openThree();
    differences.beginNewMark();
    int frame = differences.stage().frameProperty().get();
    differences.stage().step(2);
    assertEquals(frame + 1, differences.player().stills().leftProperty().get().index());
    assertEquals(frame + 3, differences.player().stills().rightProperty().get().index());
    differences.newMark().setSide(Side.BACK);
    differences.newMark().toggleZone(Zone.WRIST);
    differences.saveNewMark();

    Slap anew = kept.get(0).slaps().get(0).anew();
    assertEquals(
        Slap.onFrame(
            Slap.Kind.SLAP,
            frames.timeS(frame + 2),
            frames.resolutionS(frame + 2),
            Side.BACK,
            Zone.WRIST),
        anew);
    assertTrue(differences.settledProperty().get().reading().slaps().contains(anew));
    assertFalse(differences.newMark().activeProperty().get());
    differences.beginNewMark();
    differences.decideNothing();
    assertNull(kept.get(1).slaps().get(1).anew());
    assertEquals(Decision.Choice.NEITHER, kept.get(1).slaps().get(1).choice());
  }

  @Test
  void stretchMadeAfreshCannotEndBeforeItBegins() {
    open(reading("A", true, even(8), span(1.2, 2)), reading("B", true, even(8), span(1.8, 2.6)));
    differences.beginNewMark();
    differences.stage().seek(frames.nearest(1.5));
    differences.newMark().setSide(Side.PALM);
    differences.stage().seek(frames.nearest(1.4));
    differences.newMark().setSide(Side.BACK);
    assertEquals(1, said.size());
    differences.stage().seek(frames.nearest(2.5));
    differences.newMark().setSide(Side.BACK);
    differences.saveNewMark();
    assertEquals(span(1.5, 2.5), kept.get(0).spans().get(0).anew());
  }

  @Test
  void whyStandsWithTheDecisionSaidBeforeOrAfter() {
    openThree();
    differences.setReason("seen twice");
    assertEquals(List.of(), kept);
    differences.choose(Decision.Choice.FIRST);
    assertEquals("seen twice", kept.get(0).slaps().get(0).why());
    differences.goBack();
    differences.setReason("heard too");
    Decision<Slap> second = kept.get(1).slaps().get(1);
    assertEquals("heard too", second.why());
    assertEquals(Decision.Choice.FIRST, second.choice());
    assertEquals(0, differences.positionProperty().get());
    differences.goForward();
    assertEquals("", differences.reason());
  }

  @Test
  void withoutInitialsNothingIsDecided() {
    initials = "";
    openThree();
    differences.choose(Decision.Choice.FIRST);
    assertEquals(List.of(), kept);
    assertEquals(0, differences.positionProperty().get());
  }

  @Test
  void secondWindowLooksButDoesNotDecide() {
    readOnly = true;
    openThree();
    differences.choose(Decision.Choice.FIRST);
    differences.beginNewMark();
    differences.setReason("no");
    differences.goForward();
    assertEquals(1, differences.positionProperty().get());
    differences.goBack();
    assertEquals(0, differences.positionProperty().get());
    assertEquals(List.of(), kept);
    assertEquals(List.of("read-only", "read-only", "read-only"), said);
  }

  @Test
  void whereNothingDiffersThatCanBeSettledToo() {
    open(reading("A", true, even(8)), reading("B", true, even(8)));
    assertEquals(List.of(), differences.itemsProperty().get());
    assertTrue(differences.finish());
    assertEquals(List.of(Settlement.begin("A", "B")), kept);
    assertFalse(differences.finish(), "once is enough");
  }

  @Test
  void decisionsAreThereOnReopening() {
    Trial trial = openThree();
    differences.choose(Decision.Choice.SECOND);
    differences.close();
    assertNull(differences.settledProperty().get());
    open(trial.withSettlement(kept.get(0)));
    assertEquals(1, differences.decidedCount());
    assertEquals(1, differences.positionProperty().get());
  }

  @Test
  void decisionsStayWhereAnotherPairIsLookedAtInBetween() {
    List<Slap> b = new ArrayList<>(even(8));
    b.set(3, b.get(3).withSide(Side.PALM));
    open(reading("A", true, even(8)), reading("B", true, b), reading("C", true, even(7)));
    differences.choose(Decision.Choice.FIRST);
    differences.compareNextPair();
    assertEquals(new ReadingPair("A", "C"), differences.comparison().pairProperty().get());
    assertEquals(1, differences.settledProperty().get().open());
    differences.choose(Decision.Choice.FIRST);
    differences.compareNextPair();
    differences.compareNextPair();
    assertEquals(new ReadingPair("A", "B"), differences.comparison().pairProperty().get());
    assertEquals(1, differences.decidedCount());
  }

  @Test
  void eachDifferenceLoopsOverBothMarks() {
    List<Slap> b = new ArrayList<>(even(8));
    b.set(3, at(b.get(3), b.get(3).timeS() + 0.06));
    open(reading("A", true, even(8)), reading("B", true, b));
    assertTrue(differences.stage().loopingProperty().get());
    int from = differences.stage().frameProperty().get();
    assertTrue(frames.timeS(from) < even(8).get(3).timeS());
    differences.player().playOrStop();
    assertFalse(differences.stage().playingProperty().get());
    assertEquals(
        frames.nearest(even(8).get(3).timeS()),
        differences.player().stills().leftProperty().get().index());
    assertEquals(
        frames.nearest(b.get(3).timeS()),
        differences.player().stills().rightProperty().get().index());
  }

  @Test
  void secondReaderSeesNothingBeforeTheOwnReadingIsFinished() {
    Reading first = reading("A", true, even(8));
    Reading own = reading("B", false, even(6));
    assertFalse(ReadingPair.refusal(trial(first, own), "B").isEmpty());
    assertEquals("", ReadingPair.refusal(trial(first, own.withFinished(true)), "B"));
    assertEquals("", ReadingPair.refusal(trial(first, own), "A"));
    assertEquals("", ReadingPair.refusal(trial(first, own), null));
    assertFalse(ReadingPair.refusal(trial(first), "C").isEmpty(), "may still read it blind");
    assertEquals("", ReadingPair.refusal(trial(first, own.withFinished(true)), "C"));
    assertEquals("", ReadingPair.refusal(trial(first, own.withEstimateSeen(true)), "B"));
  }

  @Test
  void finishedReadingsComeFirstAndEmptyOnesNotAtAll() {
    Trial trial =
        trial(
            reading("O", false, even(3)),
            reading("A", true, even(8)),
            reading("E", false, List.of()),
            reading("B", true, even(8)));
    assertEquals(
        List.of(new ReadingPair("A", "B"), new ReadingPair("A", "O"), new ReadingPair("B", "O")),
        ReadingPair.of(trial));
    assertEquals(
        List.of(new ReadingPair("O", "B"), new ReadingPair("A", "B"), new ReadingPair("A", "O")),
        ReadingPair.of(trial.withSettlement(Settlement.begin("O", "B"))));
  }

  @Test
  void openReadingIsToldOf() {
    open(reading("A", true, even(8)), reading("O", false, even(7)));
    assertEquals(
        List.of("the reading by O is still open"), differences.comparison().notesProperty().get());
  }

  @Test
  void tenMinutesOfThreeThousandMarksOpenWithinASecond() {
    Random random = new Random(17);
    List<Slap> a = new ArrayList<>();
    List<Slap> b = new ArrayList<>();
    for (int i = 0; i < 3000; i++) {
      Slap slap = slap(0.2 * i, i % 2 == 0 ? Side.PALM : Side.BACK);
      a.add(slap);
      int chance = random.nextInt(100);
      if (chance >= 5) {
        b.add(
            chance < 9 ? slap.withSide(Side.PALM) : chance < 12 ? at(slap, 0.2 * i + 0.06) : slap);
      }
    }
    FrameTable table = FrameTables.steady(36_000, 60);
    double[] tookS = new double[5];
    for (int i = 0; i < tookS.length; i++) {
      long began = System.nanoTime();
      differences.open(
          new ReviewedTrial(
              trial(reading("A", true, a), reading("B", true, b)),
              table,
              index -> CompletableFuture.completedFuture(picture(index)),
              5),
          "");
      tookS[i] = (System.nanoTime() - began) / 1e9;
      assertTrue(differences.itemsProperty().get().size() > 200);
    }
    System.out.printf(
        Locale.ROOT,
        "3,000 marks a reading, %d differences: opened in %.0f ms the first time, then %.0f ms%n",
        differences.itemsProperty().get().size(),
        1000 * tookS[0],
        1000 * Arrays.stream(tookS).skip(1).min().orElseThrow());
    assertTrue(tookS[0] < 1, tookS[0] + " s");
  }

  private Trial openThree() {
    List<Slap> b = new ArrayList<>(even(8));
    b.set(3, b.get(3).withSide(Side.PALM));
    b.set(5, b.get(5).withZone(Zone.EDGE));
    b.set(6, b.get(6).withZone(Zone.FINGERS));
    Trial trial = trial(reading("A", true, even(8)), reading("B", true, b));
    open(trial);
    assertEquals(3, differences.itemsProperty().get().size());
    return trial;
  }

  private void open(Reading... readings) {
    open(trial(readings));
  }

  private void open(Trial trial) {
    differences.open(
        new ReviewedTrial(
            trial, frames, index -> CompletableFuture.completedFuture(picture(index)), 5),
        "");
  }

  private Picture picture(int index) {
    return new Picture(index, index * FRAME_S, 1, 1, new int[1]);
  }

  private static Slap slap(double timeS, Side side) {
    return Slap.onFrame(Slap.Kind.SLAP, timeS, FRAME_S, side, Zone.CENTRE);
  }

  private static Slap at(Slap slap, double timeS) {
    return slap.movedToFrame(timeS, FRAME_S);
  }

  private static List<Slap> even(int n) {
    List<Slap> slaps = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      slaps.add(slap(1 + 0.2 * i, i % 2 == 0 ? Side.PALM : Side.BACK));
    }
    return slaps;
  }

  private static Span span(double startS, double endS) {
    return new Span(Span.SpanKind.ELBOW_OUT, startS, endS, "", Extra.NONE);
  }

  private static Reading reading(String reader, boolean finished, List<Slap> slaps, Span... spans) {
    return new Reading(
        reader, finished, StartedFrom.NOTHING, slaps, Arrays.asList(spans), Extra.NONE);
  }

  private static Trial trial(Reading... readings) {
    return new Trial(
        new TrialId(Hand.RIGHT, "baseline", 1),
        new ClipRef("clips/a.mp4", "0".repeat(64), FRAME_S, Extra.NONE),
        null,
        null,
        Mirrored.FALSE,
        null,
        TimeScale.REAL,
        null,
        null,
        Arrays.asList(readings),
        null,
        List.of(),
        PlacedPoints.NONE,
        Extra.NONE);
  }
}
