package palmturn.work.session;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import palmturn.store.SessionFolder;
import palmturn.trial.DrillHand;
import palmturn.trial.Session;

class NotesTest {
  private static final int MANY = 40;

  @TempDir private Path where;

  @Test
  void messagesAndDrillsSavedAtTheSameTimeLoseNothingOfEachOther() throws Exception {
    Path folder = where.resolve("session");
    try (SessionFolder open =
        Sessions.create(folder, "H-07", LocalDate.of(2026, 11, 14), Session.Facts.NONE)) {
      List<Callable<Boolean>> work = new ArrayList<>();
      for (int i = 1; i <= MANY; i++) {
        String block = "after-" + i;
        work.add(
            () -> {
              Notes.drill(open, block, "rest", DrillHand.NONE, "", DrillTime.UNKNOWN);
              return true;
            });
        work.add(
            () -> {
              Notes.message(open, "AK", block, null, null, Clock.systemUTC());
              return true;
            });
      }
      ExecutorService two = Executors.newFixedThreadPool(2);
      try {
        for (Future<Boolean> each : two.invokeAll(work)) {
          each.get();
        }
      } finally {
        two.shutdown();
      }
    }
    try (SessionFolder looking = SessionFolder.openReadOnly(folder)) {
      assertEquals(1 + MANY, looking.session().blocks().size());
      assertEquals(MANY, looking.session().messages().size());
    }
  }
}
