package palmturn.work.estimate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicReference;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import palmturn.clip.Progress;
import palmturn.estimate.request.Hints;
import palmturn.estimate.request.KnownSide;
import palmturn.estimate.request.Request;
import palmturn.store.SessionFolder;
import palmturn.store.StoreException;
import palmturn.trial.Block;
import palmturn.trial.Estimate;
import palmturn.trial.Extra;
import palmturn.trial.Hand;
import palmturn.trial.KnownLength;
import palmturn.trial.Mirrored;
import palmturn.trial.Point;
import palmturn.trial.Reading;
import palmturn.trial.SampleFiles;
import palmturn.trial.Session;
import palmturn.trial.Side;
import palmturn.trial.Slap;
import palmturn.trial.StartedFrom;
import palmturn.trial.TrialId;
import palmturn.trial.UserError;
import palmturn.trial.Zone;
import palmturn.work.session.AddClip;
import palmturn.work.session.Sessions;

/** What is asked of the estimator, and what is stored. */
class EstimatingTest {
  private static final Path CLIP = Path.of("sample-clips-synthetic/right-baseline-1.mp4");
  private static final Estimate FOUND = SampleFiles.fullEstimate();

  @TempDir Path temp;
  private SessionFolder folder;
  private final AtomicReference<Request> asked = new AtomicReference<>();

  private final Estimating estimating =
      new Estimating(
          (clip, request, watch) -> {
            asked.set(request);
            return FOUND;
          });

  @BeforeEach
  void makeSession() throws Exception {
    Session.Facts facts = new Session.Facts(null, 26.0, 18.5, 171.0, null, null, null, null);
    folder = Sessions.create(temp.resolve("s"), "H-07", LocalDate.of(2026, 11, 14), facts);
  }

  @AfterEach
  void close() throws Exception {
    folder.close();
  }

  private TrialId add(Hand hand, Mirrored mirrored, Double captureFps) throws Exception {
    AddClip.ClipRequest request =
        new AddClip.ClipRequest(hand, Block.BASELINE, null, 0.5, 6.0, mirrored, null, captureFps);
    return AddClip.add(folder, CLIP, request).trial().id();
  }

  private TrialId add(Hand hand) throws Exception {
    return add(hand, Mirrored.FALSE, null);
  }

  private Estimate run(TrialId id) throws Exception {
    return estimating.trial(folder, id, Estimating.Options.ALL, Progress.NONE);
  }

  @Test
  void aTrialsEstimateIsStoredAndFoundAgain() throws Exception {
    TrialId id = add(Hand.RIGHT);
    Estimate found = run(id);
    folder.close();
    folder = Sessions.open(temp.resolve("s"));
    assertEquals(found, folder.trial(id).estimate());
    assertEquals(FOUND.soundOffsetS(), folder.trial(id).soundOffsetS());
  }

  @Test
  void whatWasPointedAtIsAHintUnlessAnotherIsGiven() throws Exception {
    TrialId id = add(Hand.RIGHT);
    folder.keep(id, SampleFiles.fullPlaces());
    run(id);
    assertEquals(
        new Hints(
            new Estimate.Region(100, 120.5, 200, 160),
            new Point(412.5, 300),
            new Point(320, 210),
            new KnownLength(new Point(412, 300), new Point(220, 280), 25.5),
            26.0,
            18.5,
            171.0),
        asked.get().hints());
    assertEquals(SampleFiles.fullPlaces(), folder.trial(id).places());

    Hints given = new Hints(null, new Point(1, 2), null, null, null, null, null);
    estimating.trial(
        folder,
        id,
        new Estimating.Options(Estimating.Options.ALL.use(), given, null),
        Progress.NONE);
    assertEquals(new Point(1, 2), asked.get().hints().elbow());
    assertEquals(new Point(320, 210), asked.get().hints().trunk());
  }

  @Test
  void theTrialSaysStretchAndTheSessionTheAthletesLengths() throws Exception {
    run(add(Hand.LEFT));
    Request request = asked.get();
    assertEquals(Hand.LEFT, request.hand());
    assertEquals(0.5, request.fromS());
    assertEquals(6.0, request.toS());
    assertEquals(1, request.realPerMediaS());
    assertEquals(26.0, request.hints().forearmCm());
    assertEquals(18.5, request.hints().handCm());
    assertEquals(171.0, request.hints().statureCm());
    assertNull(request.known());
  }

  @Test
  void aMirroredPictureShowsTheOtherHand() throws Exception {
    run(add(Hand.RIGHT, Mirrored.TRUE, null));
    assertEquals(Hand.LEFT, asked.get().hand());
    run(add(Hand.RIGHT, Mirrored.UNKNOWN, null));
    assertEquals(Hand.RIGHT, asked.get().hand());
  }

  @Test
  void slowMotionIsSaid() throws Exception {
    run(add(Hand.RIGHT, Mirrored.FALSE, 240.0));
    // 60 shown frames a second of 240 captured ones: a media second lasts a quarter.
    assertEquals(0.25, asked.get().realPerMediaS(), 1e-6);
    assertEquals(240.0, asked.get().captureFps());
  }

  @Test
  void theFirstSeenSideOfAReaderTellsPalmFromBack() throws Exception {
    TrialId id = add(Hand.RIGHT);
    folder.keep(
        id,
        new Reading("E", false, StartedFrom.ESTIMATE, List.of(unseen(1.0)), List.of(), Extra.NONE),
        "x");
    run(id);
    assertNull(asked.get().known(), "an unseen mark is the estimate's own");
    List<Slap> marks = List.of(mark(0.4, Side.PALM), mark(0.9, Side.UNKNOWN), mark(1.2, Side.BACK));
    folder.keep(id, Reading.begin("AB", StartedFrom.NOTHING).withSlaps(marks), "Add slaps");
    Estimate found = run(id);
    assertEquals(new KnownSide(1.2, Side.BACK), asked.get().known());
    String last = found.warnings().get(found.warnings().size() - 1);
    assertEquals("Palm and back follow AB's mark at 1.200 s: back.", last);
  }

  private static Slap mark(double timeS, Side side) {
    return Slap.onFrame(Slap.Kind.SLAP, timeS, 1 / 60.0, side, Zone.CENTRE);
  }

  private static Slap unseen(double timeS) {
    return FOUND.toReading("E").slaps().get(0).withNote("at " + timeS);
  }

  @Test
  void aSideThatIsGivenGoesBeforeTheReaders() throws Exception {
    TrialId id = add(Hand.RIGHT);
    Slap seen = mark(1.2, Side.BACK);
    folder.keep(id, Reading.begin("AB", StartedFrom.NOTHING).plus(seen), "Add a slap");
    KnownSide given = new KnownSide(2.0, Side.PALM);
    estimating.trial(
        folder,
        id,
        new Estimating.Options(Estimating.Options.ALL.use(), Estimating.Options.ALL.hints(), given),
        Progress.NONE);
    assertEquals(given, asked.get().known());
  }

  @Test
  void marksMadeMeanwhileStay() throws Exception {
    TrialId id = add(Hand.RIGHT);
    Reading reading = Reading.begin("AB", StartedFrom.NOTHING).plus(mark(1, Side.PALM));
    new Estimating(
            (clip, request, watch) -> {
              assertTrue(keep(id, reading));
              return FOUND;
            })
        .trial(folder, id, Estimating.Options.ALL, Progress.NONE);
    assertEquals(reading, folder.trial(id).reading("AB").orElseThrow());
    assertNotNull(folder.trial(id).estimate());
  }

  private boolean keep(TrialId id, Reading reading) {
    try {
      folder.keep(id, reading, "Add a slap");
      return true;
    } catch (StoreException e) {
      return false;
    }
  }

  @Test
  void aClipThatChangedIsRefusedAndNothingStored() throws Exception {
    TrialId id = add(Hand.RIGHT);
    Path clip = folder.clipPath(folder.trial(id));
    Estimating meddled =
        new Estimating(
            (file, request, watch) -> {
              try {
                Files.write(clip, new byte[] {1, 2, 3});
              } catch (IOException e) {
                throw new UncheckedIOException(e);
              }
              return FOUND;
            });
    assertThrows(
        UserError.class, () -> meddled.trial(folder, id, Estimating.Options.ALL, Progress.NONE));
    assertNull(folder.trial(id).estimate());
    UserError error = assertThrows(UserError.class, () -> run(id));
    assertTrue(error.getMessage().contains("changed"), error.getMessage());
  }

  @Test
  void aStretchAfterTheEndIsRefused() {
    Estimating.Clip late = new Estimating.Clip(CLIP, Hand.RIGHT, Mirrored.FALSE, 100.0, null, null);
    UserError error =
        assertThrows(
            UserError.class, () -> estimating.clip(late, Estimating.Options.ALL, Progress.NONE));
    assertTrue(error.getMessage().contains("ends at 7.000 s"), error.getMessage());
    assertNull(asked.get());
  }

  @Test
  void whatWasStoppedIsNotStored() throws Exception {
    TrialId id = add(Hand.RIGHT);
    Progress stopping =
        new Progress() {
          @Override
          public void at(double share, String what) {}

          @Override
          public boolean stopped() {
            return true;
          }
        };
    Estimating stopped =
        new Estimating(
            (clip, request, watch) -> {
              if (watch.stopped()) {
                throw new IllegalStateException("stopped");
              }
              return FOUND;
            });
    UserError error =
        assertThrows(
            UserError.class, () -> stopped.trial(folder, id, Estimating.Options.ALL, stopping));
    assertTrue(error.getMessage().contains("stopped; nothing was stored"), error.getMessage());
    assertNull(folder.trial(id).estimate());
  }

  @Test
  void theProgressOfSeveralIsTheirMean() {
    List<Double> shares = new ArrayList<>();
    SharedProgress shared =
        new SharedProgress(
            new Progress() {
              @Override
              public void at(double share, String what) {
                shares.add(share);
              }

              @Override
              public boolean stopped() {
                return false;
              }
            },
            4);
    shared.part(0, "x").at(1, "a");
    shared.part(3, "y").at(0.5, "b");
    assertEquals(List.of(0.25, 0.375), shares);
  }

  @Test
  void whatTheLibraryOfPicturesRefusesIsSaidWithoutItsFolders() throws Exception {
    TrialId id = add(Hand.RIGHT);
    Estimating failing =
        new Estimating(
            (clip, request, watch) -> {
              throw new IllegalStateException("OpenCV(4.13.0) /builds/x.cpp:31: error: (-215)");
            });
    UserError error =
        assertThrows(
            UserError.class,
            () -> failing.trial(folder, id, Estimating.Options.ALL, Progress.NONE));
    assertEquals(
        "right-baseline-1.mp4: its pictures are not ones that hands can be looked for in; are they"
            + " too small?",
        error.getMessage());
  }
}
