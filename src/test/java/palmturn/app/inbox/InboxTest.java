package palmturn.app.inbox;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import palmturn.app.tasks.Tasks;
import palmturn.clip.Progress;
import palmturn.settings.RecentSessions;
import palmturn.store.SessionFolder;
import palmturn.trial.Session;
import palmturn.work.pack.Packing;
import palmturn.work.search.InboxSearch;
import palmturn.work.session.Sessions;

class InboxTest {
  @TempDir private Path folder;

  private final RecentSessions recents = RecentSessions.inMemory();
  private final List<Path> opened = new ArrayList<>();

  @Test
  void withoutAFolderItSaysWhatToDo() {
    Inbox inbox = inbox(Tasks.direct());
    inbox.show();
    assertTrue(inbox.shownProperty().get());
    assertTrue(inbox.wordsProperty().get().startsWith("Choose the folder"));
    inbox.open();
    assertTrue(opened.isEmpty());
    inbox.choose(folder);
    assertEquals("There is no session in this folder yet.", inbox.wordsProperty().get());
    assertEquals(folder, recents.inbox());
    inbox.choose(folder.resolve("gone"));
    assertTrue(inbox.wordsProperty().get().contains("is not there"));
  }

  @Test
  void newestIsChosenAndKeysMoveAndOpen() throws Exception {
    session("a", 1);
    session("b", 3);
    Files.writeString(folder.resolve("H-15.palmturn.zip"), "");
    Inbox inbox = inbox(Tasks.direct());
    inbox.choose(folder);
    assertEquals(folder.resolve("b"), inbox.chosenProperty().get());
    inbox.move(1);
    inbox.open();
    assertEquals(List.of(folder.resolve("a")), opened);
    inbox.move(9);
    inbox.open();
    assertTrue(inbox.wordsProperty().get().contains("is no pack"));
    assertEquals(1, opened.size());
  }

  @Test
  void packIsBroughtIntoItsSessionAndOpened() throws Exception {
    session("a", 1);
    try (SessionFolder sent = SessionFolder.openReadOnly(folder.resolve("a"))) {
      Packing.write(
          sent,
          Packing.ClipsAs.LEFT_OUT,
          Packing.SoundAs.SLAPS,
          folder.resolve("a.palmturn.zip"),
          Clock.systemUTC(),
          Progress.NONE);
    }
    Inbox inbox = inbox(Tasks.direct());
    inbox.choose(folder);
    inbox.move(1);
    inbox.open();
    assertEquals(1, opened.size(), inbox.wordsProperty().get());
    assertTrue(Files.exists(opened.get(0).resolve("session.json")));
    assertNotEquals(folder.resolve("a"), opened.get(0));
  }

  @Test
  void searchingAgainKeepsTheChoiceAndDropsWhatIsGone() throws Exception {
    session("a", 1);
    session("b", 3);
    Inbox inbox = inbox(Tasks.direct());
    inbox.choose(folder);
    inbox.move(1);
    Files.delete(folder.resolve("b").resolve("session.json"));
    inbox.search();
    assertEquals(1, inbox.foundProperty().get().size());
    assertEquals(folder.resolve("a"), inbox.chosenProperty().get());
  }

  @Test
  void stoppedSearchSaysThatItIsNotAll() throws Exception {
    session("a", 1);
    List<Runnable> waiting = new ArrayList<>();
    Inbox inbox =
        inbox(
            new Tasks() {
              @Override
              public <T> void run(Callable<T> work, Consumer<T> done, Consumer<Exception> failed) {
                waiting.add(() -> Tasks.direct().run(work, done, failed));
              }
            });
    inbox.choose(folder);
    inbox.stop();
    waiting.forEach(Runnable::run);
    assertNull(inbox.searchProperty().get());
    assertTrue(inbox.foundProperty().get().isEmpty());
    assertTrue(inbox.wordsProperty().get().startsWith("Stopped"));
    inbox.hide();
    assertFalse(inbox.shownProperty().get());
  }

  private Inbox inbox(Tasks tasks) {
    return new Inbox(tasks, Runnable::run, recents, new Opened());
  }

  private void session(String name, int day) throws Exception {
    Sessions.create(folder.resolve(name), "H-07", LocalDate.of(2026, 11, day), Session.Facts.NONE)
        .close();
  }

  /** The sessions that were opened. */
  private final class Opened implements Inbox.Sessions {
    @Override
    public boolean isOpen(Path session) {
      return false;
    }

    @Override
    public void open(Path session) {
      opened.add(session);
    }

    @Override
    public int unseen(InboxSearch.Found found) {
      return 0;
    }
  }
}
