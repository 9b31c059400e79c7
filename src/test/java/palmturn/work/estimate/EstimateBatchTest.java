package palmturn.work.estimate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import palmturn.clip.Progress;
import palmturn.store.SessionFolder;
import palmturn.trial.Block;
import palmturn.trial.Hand;
import palmturn.trial.Mirrored;
import palmturn.trial.SampleFiles;
import palmturn.trial.Session;
import palmturn.trial.UserError;
import palmturn.work.search.InputPaths;
import palmturn.work.session.AddClip;
import palmturn.work.session.Sessions;

/** Many clips and sessions: what a bad one does to the rest, and how broken-off work goes on. */
class EstimateBatchTest {
  private static final Path CLIP = Path.of("sample-clips-synthetic/right-baseline-1.mp4");
  private static final EstimateBatch.Counts ALL_THERE = new EstimateBatch.Counts(0, 0, 2, 1, false);

  @TempDir Path temp;
  private Path clips;
  private Path file;
  private int jobs = 2;

  /** The clips that the engine was asked for. */
  private final ConcurrentLinkedQueue<String> made = new ConcurrentLinkedQueue<>();

  private final List<EstimateBatch.Outcome> ended = new ArrayList<>();

  private final Estimating estimating =
      new Estimating(
          (clip, request, watch) -> {
            made.add(clip.path().getFileName().toString());
            return SampleFiles.fullEstimate(clip.facts().sha256());
          });

  @BeforeEach
  void makeAFolderWithABadClipInTheMiddle() throws IOException {
    clips = Files.createDirectory(temp.resolve("clips"));
    file = temp.resolve("estimates.jsonl");
    Files.copy(CLIP, clips.resolve("a.mp4"));
    Files.writeString(clips.resolve("b.mp4"), "no clip");
    Files.copy(CLIP, clips.resolve("c.MOV"));
    Files.writeString(clips.resolve("._a.mp4"), "what some systems keep beside a file");
    Files.writeString(clips.resolve("a.marks.csv"), "timeS");
  }

  private EstimateBatch.Counts run(boolean retry, Progress progress) throws Exception {
    made.clear();
    ended.clear();
    try (EstimatesFile open = EstimatesFile.open(file, retry)) {
      return run(InputPaths.of(List.of(clips), false), open, estimating, progress);
    }
  }

  private EstimateBatch.Counts run(boolean retry) throws Exception {
    return run(retry, Progress.NONE);
  }

  private EstimateBatch.Counts run(
      InputPaths found, EstimatesFile open, Estimating by, Progress progress) throws UserError {
    EstimateBatch.Selection wanted =
        new EstimateBatch.Selection(
            found.clips().stream()
                .map(
                    path -> new Estimating.Clip(path, Hand.RIGHT, Mirrored.FALSE, null, null, null))
                .toList(),
            found.sessions(),
            null,
            null,
            Estimating.Options.ALL,
            jobs);
    return new EstimateBatch(by, wanted, open)
        .run(
            progress,
            new EstimateBatch.Listener() {
              @Override
              public void ended(EstimateBatch.Outcome one) {
                ended.add(one);
              }

              @Override
              public void notice(String line) {}
            });
  }

  private Set<String> made() {
    return new TreeSet<>(made);
  }

  @Test
  void aBadClipDoesNotStopTheRestAndEachHasItsLine() throws Exception {
    assertEquals(new EstimateBatch.Counts(2, 1, 0, 0, false), run(false));
    assertEquals(Set.of("a.mp4", "c.MOV"), made());
    List<String> lines = Files.readAllLines(file);
    assertEquals(3, lines.size());
    String bad = lines.stream().filter(line -> line.contains("b.mp4")).findFirst().orElseThrow();
    assertTrue(bad.contains("\"error\":\"b.mp4"), bad);
    assertEquals(
        new TreeSet<>(lines),
        ended.stream()
            .map(EstimateBatch.Outcome::jsonLine)
            .collect(Collectors.toCollection(TreeSet::new)));
  }

  @Test
  void theSameAgainDoesNothingAlsoFromAnotherFolder() throws Exception {
    run(false);
    String before = Files.readString(file);
    assertEquals(ALL_THERE, run(false));
    Path moved = temp.resolve("moved");
    Files.move(clips, moved);
    clips = moved;
    assertEquals(ALL_THERE, run(false));
    assertEquals(Set.of(), made());
    assertEquals(before, Files.readString(file));
  }

  @Test
  void whatFailedIsTriedAgainOnlyWhenAskedForAndAChangedClipAlways() throws Exception {
    run(false);
    assertEquals(new EstimateBatch.Counts(0, 1, 2, 0, false), run(true), "still no clip");
    Files.copy(CLIP, clips.resolve("b.mp4"), StandardCopyOption.REPLACE_EXISTING);
    assertEquals(new EstimateBatch.Counts(1, 0, 2, 0, false), run(false), "another SHA-256");
    assertEquals(Set.of("b.mp4"), made());
    assertEquals(new EstimateBatch.Counts(0, 0, 3, 0, false), run(false));
  }

  @Test
  void aHalfWrittenLineIsTakenOutAndItsClipDoneAgain() throws Exception {
    run(false);
    String whole = Files.readString(file);
    int second = whole.indexOf('\n', whole.indexOf('\n') + 1) + 1;
    for (int end : new int[] {second + 1, second + 20, whole.length() - 2}) {
      Files.writeString(file, whole.substring(0, end));
      try (EstimatesFile open = EstimatesFile.open(file, false)) {
        assertTrue(open.repaired());
      }
      EstimateBatch.Counts counts = run(false);
      assertEquals(1, counts.estimated() + counts.failed(), counts.toString());
      assertEquals(
          new TreeSet<>(whole.lines().toList()), new TreeSet<>(Files.readAllLines(file)), "whole");
    }
    Files.writeString(file, whole.stripTrailing());
    assertEquals(ALL_THERE, run(false), "only the last line break is missing");
    assertEquals(whole, Files.readString(file));
  }

  @ParameterizedTest
  @ValueSource(strings = {"notes", "notes\n", "{\"a\":1}\n", "{\"clip\":\"a\"}\nnotes\n"})
  void anotherFileIsRefusedAndLeftAsItIs(String text) throws Exception {
    Files.writeString(file, text);
    UserError error = assertThrows(UserError.class, () -> run(false));
    assertTrue(error.getMessage().contains("is no estimate"), error.getMessage());
    assertEquals(text, Files.readString(file));
  }

  @Test
  void oneAtATimeWritesTheFile() throws Exception {
    try (EstimatesFile open = EstimatesFile.open(file, false)) {
      assertFalse(open.repaired());
      UserError error = assertThrows(UserError.class, () -> EstimatesFile.open(file, false));
      assertTrue(error.getMessage().contains("another Palmturn"), error.getMessage());
    }
  }

  @Test
  void whatIsStoppedSaysNothingOfTheRestAndGoesOnLater() throws Exception {
    Progress stopsAfterTheFirst =
        new Progress() {
          @Override
          public void at(double share, String what) {}

          @Override
          public boolean stopped() {
            return !made.isEmpty();
          }
        };
    jobs = 1;
    assertEquals(new EstimateBatch.Counts(1, 0, 0, 0, true), run(false, stopsAfterTheFirst));
    assertEquals(1, Files.readAllLines(file).size());
    run(false);
    assertEquals(ALL_THERE, run(false));
    assertEquals(3, Files.readAllLines(file).size());
  }

  @Test
  void sessionsFoundInAFolderStoreTheirEstimatesAndABadOneDoesNotStopTheRest() throws Exception {
    Path sessions = Files.createDirectory(temp.resolve("sessions"));
    Path good = sessions.resolve("H-07");
    Path bad = Files.createDirectory(sessions.resolve("A-bad"));
    Files.writeString(bad.resolve("session.json"), "{");
    try (SessionFolder folder =
        Sessions.create(good, "H-07", LocalDate.of(2026, 11, 14), Session.Facts.NONE)) {
      for (Hand hand : List.of(Hand.RIGHT, Hand.LEFT, Hand.RIGHT)) {
        AddClip.ClipRequest request =
            new AddClip.ClipRequest(
                hand, Block.BASELINE, null, null, null, Mirrored.FALSE, null, null);
        AddClip.add(folder, CLIP, request);
      }
    }
    assertEquals(1, InputPaths.of(List.of(sessions), false).errors().size());
    InputPaths found = InputPaths.of(List.of(sessions), true);
    Estimating failing =
        new Estimating(
            (clip, request, watch) -> {
              if (request.hand() == Hand.LEFT) {
                throw new IllegalStateException("no such luck");
              }
              return SampleFiles.fullEstimate();
            });
    assertEquals(
        new EstimateBatch.Counts(2, 2, 0, 0, false), run(found, null, failing, Progress.NONE));
    String errors =
        ended.stream()
            .filter(one -> one.error() != null)
            .map(EstimateBatch.Outcome::jsonLine)
            .collect(Collectors.joining());
    assertTrue(errors.contains("no such luck"), errors);
    assertTrue(errors.contains("A-bad"), errors);
    try (SessionFolder folder = Sessions.open(good)) {
      assertNull(folder.trials().get(0).estimate(), "left");
      assertNotNull(folder.trials().get(1).estimate());
      assertNotNull(folder.trials().get(2).estimate());
    }
  }
}
