package palmturn.work.search;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import palmturn.clip.Progress;
import palmturn.settings.SeenMessages;
import palmturn.store.SessionFolder;
import palmturn.trial.Block;
import palmturn.trial.Hand;
import palmturn.trial.Message;
import palmturn.trial.Reading;
import palmturn.trial.Session;
import palmturn.trial.Side;
import palmturn.trial.Slap;
import palmturn.trial.StartedFrom;
import palmturn.trial.TrialId;
import palmturn.trial.Zone;
import palmturn.work.report.Reports;
import palmturn.work.score.Standards;
import palmturn.work.search.InboxSearch.Found;
import palmturn.work.search.InboxSearch.SessionState;
import palmturn.work.session.AddClip;
import palmturn.work.session.Notes;
import palmturn.work.session.Sessions;

class InboxSearchTest {
  private static final Path CLIP = Path.of("sample-clips-synthetic/right-baseline-1.mp4");
  private static final Clock CLOCK =
      Clock.fixed(Instant.parse("2026-11-20T18:00:00Z"), ZoneOffset.UTC);

  @TempDir private Path inbox;

  @Test
  void sessionGoesFromNewThroughInWorkToAnsweredAndBack() throws Exception {
    Path path = inbox.resolve("club").resolve("H-07");
    Files.createDirectories(path.getParent());
    TrialId id;
    try (SessionFolder session = session(path, "H-07", 14)) {
      assertEquals(SessionState.NOT_FILMED, InboxSearch.look(path).state());
      id =
          AddClip.add(session, CLIP, AddClip.ClipRequest.of(Hand.RIGHT, Block.BASELINE))
              .trial()
              .id();
      Notes.message(session, Message.ATHLETE, "my elbow strays", id, 2.0, CLOCK);
      assertEquals(SessionState.NEW, InboxSearch.look(path).state());

      session.keep(id, marks(5), "marked");
      assertEquals(SessionState.IN_WORK, InboxSearch.look(path).state());
      session.keep(id, marks(5).withFinished(true), "finished");
      assertEquals(SessionState.IN_WORK, InboxSearch.look(path).state());
      Reports.write(
          session,
          null,
          Standards.of(path.resolveSibling("settings"), path),
          null,
          null,
          CLOCK,
          Progress.NONE);
      assertEquals(SessionState.ANSWERED, InboxSearch.look(path).state());
    }
    // Closing writes the trial's file anew, but changes nothing that the report tells.
    assertEquals(SessionState.ANSWERED, InboxSearch.look(path).state());
    try (SessionFolder session = SessionFolder.open(path)) {
      session.keep(id, marks(6).withFinished(true), "one more");
      assertEquals(SessionState.IN_WORK, InboxSearch.look(path).state());
      Notes.message(session, Message.COACH, "hold it with a towel", null, null, CLOCK);
    }
    Found found = InboxSearch.look(path);
    assertEquals(SessionState.ANSWERED, found.state());
    assertEquals(1, found.read());
    assertEquals("hold it with a towel", found.last().text());
  }

  @Test
  void oneBadSessionIsListedWithItsReasonAndTheOthersAreThereNewestFirst() throws Exception {
    session(inbox.resolve("a"), "H-07", 1).close();
    session(inbox.resolve("deep/er/b"), "H-09", 3).close();
    Path bad = Files.createDirectories(inbox.resolve("bad"));
    Files.writeString(bad.resolve("session.json"), "{");
    Files.writeString(inbox.resolve("H-15.palmturn.zip"), "");
    Files.createDirectories(inbox.resolve("nothing"));

    List<Found> found = new ArrayList<>();
    InboxSearch.search(inbox, Progress.NONE, found::add);
    found.sort(InboxSearch.ORDER);
    assertEquals(
        List.of("b", "a", "H-15.palmturn.zip", "bad"),
        found.stream().map(each -> each.path().getFileName().toString()).toList());
    assertEquals(1, found.get(3).problem().lines().count());
    assertEquals(SessionState.PACK, found.get(2).state());
  }

  @Test
  void searchStopsWhenAsked() throws Exception {
    session(inbox.resolve("a"), "H-07", 1).close();
    session(inbox.resolve("b"), "H-09", 3).close();
    List<Found> found = new ArrayList<>();
    Progress one =
        new Progress() {
          @Override
          public void at(double share, String what) {}

          @Override
          public boolean stopped() {
            return !found.isEmpty();
          }
        };
    InboxSearch.search(inbox, one, found::add);
    assertEquals(1, found.size());
  }

  @Test
  void messagesAreNewUntilTheyWereSeenAndAgainWithTheNextOne() {
    Path file = inbox.resolve("settings").resolve("messages.properties");
    Message first = new Message("athlete", CLOCK.instant(), null, null, "one", NONE);
    Message second = new Message("coach", CLOCK.instant().plusSeconds(9), null, null, "two", NONE);
    SeenMessages seen = SeenMessages.in(file);
    assertEquals(1, seen.countUnseen(inbox, List.of(first)));
    seen.markSeen(inbox, List.of(first));
    assertEquals(0, SeenMessages.in(file).countUnseen(inbox, List.of(first)));
    assertEquals(1, SeenMessages.in(file).countUnseen(inbox, List.of(first, second)));
    assertTrue(seen.countUnseen(inbox.resolve("other"), List.of(first)) > 0);
  }

  @Test
  void noDateMakesAnotherMessageSeen() {
    Message far =
        new Message("athlete", Instant.parse("2099-01-01T00:00:00Z"), null, null, "far", NONE);
    Message late =
        new Message("athlete", CLOCK.instant().minusSeconds(9), null, null, "came late", NONE);
    Message next = new Message("athlete", CLOCK.instant(), null, null, "next", NONE);
    SeenMessages seen = SeenMessages.inMemory();
    seen.markSeen(inbox, List.of(far));
    assertEquals(1, seen.countUnseen(inbox, List.of(far, next)));
    seen.markSeen(inbox, List.of(far, next));
    assertEquals(1, seen.countUnseen(inbox, List.of(far, late, next)));
  }

  private static final palmturn.trial.Extra NONE = palmturn.trial.Extra.NONE;

  private static SessionFolder session(Path path, String athlete, int day) throws Exception {
    return Sessions.create(path, athlete, LocalDate.of(2026, 11, day), Session.Facts.NONE);
  }

  private static Reading marks(int slaps) {
    Reading reading = Reading.begin("AK", StartedFrom.NOTHING);
    for (int i = 0; i < slaps; i++) {
      Side side = i % 2 == 0 ? Side.PALM : Side.BACK;
      reading =
          reading.plus(Slap.onFrame(Slap.Kind.SLAP, 1 + 0.2 * i, 1 / 60.0, side, Zone.CENTRE));
    }
    return reading;
  }
}
