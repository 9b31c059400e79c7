package palmturn.work;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import palmturn.clip.Progress;
import palmturn.store.SessionFolder;
import palmturn.store.StoreException;
import palmturn.trial.Block;
import palmturn.trial.Decision;
import palmturn.trial.DrillHand;
import palmturn.trial.Hand;
import palmturn.trial.Mirrored;
import palmturn.trial.Reading;
import palmturn.trial.Session;
import palmturn.trial.TrialId;
import palmturn.trial.UserError;
import palmturn.work.report.MarksFiles;
import palmturn.work.session.AddClip;
import palmturn.work.session.DrillTime;
import palmturn.work.session.Notes;
import palmturn.work.session.Sessions;
import palmturn.work.settle.Settling;

/**
 * Builds a session from the bundled drawn clips and the marks of two fictional readers, the second
 * of whom has read two trials: one is settled, one is still to be. Athlete, club, readers and marks
 * are invented.
 */
public final class Demo {
  private static final String READER = "A";
  private static final String SECOND = "B";
  private static final String REVIEWER = "QM";
  private static final String SETTLED = "right-baseline-1";
  private static final LocalDate DATE = LocalDate.of(2026, 11, 14);

  private static final Instant WRITTEN = Instant.parse("2026-11-16T09:00:00Z");
  private static final String WORDS =
      "Your left hand lands in the middle now; that was the flips. It is still the slower one: go"
          + " faster only while 18 of 20 stay clean. Elbow in!";

  private Demo() {}

  /** Returns the folder of the bundled clips of a program's home. */
  public static Path bundledClips(Path home) throws UserError {
    Path clips = home.resolve("sample-clips-synthetic");
    if (!Files.isDirectory(clips)) {
      throw new UserError(clips + " is missing: the bundled clips are needed for the demo");
    }
    return clips;
  }

  /** Makes the session and leaves it open. */
  public static SessionFolder make(Path folder, Path clips, Progress progress) throws UserError {
    refuseFull(folder);
    Session.Facts facts =
        new Session.Facts(
            Hand.RIGHT,
            26.0,
            null,
            null,
            "none",
            null,
            "drawn, not filmed",
            "Quillmere Badminton Club");
    SessionFolder made = Sessions.create(folder, "H-07", DATE, facts);
    try {
      Notes.drill(
          made,
          "after-1",
          "paced-flips",
          DrillHand.LEFT,
          "3 a second, 20 slaps, five sets",
          DrillTime.UNKNOWN);
      Notes.message(made, "coach", WORDS, null, null, Clock.fixed(WRITTEN, ZoneOffset.UTC));
      List<TrialId> order = filmedInTurn();
      for (TrialId id : order) {
        progress.at((double) order.indexOf(id) / order.size(), id.name());
        add(made, clips, id);
      }
    } catch (UserError e) {
      try {
        made.discard(true);
      } catch (StoreException again) {
        e.addSuppressed(again);
      }
      throw e;
    }
    return made;
  }

  private static void add(SessionFolder made, Path clips, TrialId id) throws UserError {
    AddClip.Added added =
        AddClip.add(
            made,
            clips.resolve(id.name() + ".mp4"),
            new AddClip.ClipRequest(
                id.hand(), id.block(), id.repeat(), null, null, Mirrored.FALSE, null, null));
    Path marks = clips.resolve(id.name() + ".marks.csv");
    Reading reading =
        MarksFiles.reading(
            MarksFiles.text(marks), marks, READER, added.trial().clip().medianFrameS());
    made.keep(id, reading, "Marks of the demo's reader");
    Path second = clips.resolve(id.name() + ".marks-b.csv");
    if (Files.exists(second)) {
      made.keep(
          id,
          MarksFiles.reading(
              MarksFiles.text(second), second, SECOND, added.trial().clip().medianFrameS()),
          "Marks of the second reader");
    }
    if (id.name().equals(SETTLED)) {
      settle(made, id);
    }
  }

  /** The reviewer has looked at each difference, and found the first reader right. */
  private static void settle(SessionFolder made, TrialId id) throws UserError, StoreException {
    Settling.SettlementResult result =
        Settling.compare(made.trial(id), new Settling.Terms(READER, SECOND, null, null));
    Map<Integer, Decision.Choice> choices = new LinkedHashMap<>();
    for (int number = 1; number <= result.settled().open(); number++) {
      choices.put(number, Decision.Choice.FIRST);
    }
    Settling.decide(
        made,
        result,
        new Settling.Decisions(choices, Map.of(), REVIEWER, "seen on the frame"),
        Clock.fixed(WRITTEN, ZoneOffset.UTC));
  }

  /** Right and left in turn, as the protocol has it. */
  private static List<TrialId> filmedInTurn() {
    List<TrialId> order = new ArrayList<>();
    for (String block : List.of(Block.BASELINE, "after-1")) {
      for (int repeat = 1; repeat <= 3; repeat++) {
        order.add(new TrialId(Hand.RIGHT, block, repeat));
        order.add(new TrialId(Hand.LEFT, block, repeat));
      }
    }
    return order;
  }

  private static void refuseFull(Path folder) throws UserError {
    if (!Files.exists(folder)) {
      return;
    }
    try (Stream<Path> inside = Files.list(folder)) {
      if (inside.findAny().isPresent()) {
        throw new UserError(
            folder + " is there already and not empty: choose another with --dir, or remove it");
      }
    } catch (IOException e) {
      throw new UserError(folder + " can't be looked into: choose another with --dir", e);
    }
  }
}
