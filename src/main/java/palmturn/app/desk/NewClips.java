package palmturn.app.desk;

import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import palmturn.store.SessionFolder;
import palmturn.store.StoreException;
import palmturn.trial.Hand;
import palmturn.trial.Session;
import palmturn.trial.TrialId;
import palmturn.work.AddClip;
import palmturn.work.Sessions;
import palmturn.work.UserError;

/** Adds clips to a session, or makes one for them beside the first clip. */
public final class NewClips {
  private NewClips() {}

  /** A clip and the hand that moves in it. */
  public record Clip(Path path, Hand hand) {}

  /**
   * What came of it.
   *
   * @param last the trial that was added last
   * @param warnings about the clips' fitness
   */
  record Added(SessionFolder folder, TrialId last, List<String> warnings) {}

  static Added add(
      @Nullable SessionFolder there, List<Clip> clips, String athlete, String block, Clock clock)
      throws UserError {
    SessionFolder folder = there != null ? there : create(clips.get(0).path(), athlete, clock);
    List<String> warnings = new ArrayList<>();
    TrialId last = null;
    try {
      for (Clip clip : clips) {
        AddClip.Added added =
            AddClip.add(folder, clip.path(), AddClip.Request.of(clip.hand(), block));
        last = added.trial().id();
        for (String warning : added.facts().warnings()) {
          warnings.add(clip.path().getFileName() + ": " + warning);
        }
      }
    } catch (UserError e) {
      if (last == null) {
        if (there == null) {
          closeQuietly(folder);
        }
        throw e;
      }
      warnings.add(e.getMessage());
    }
    return new Added(folder, java.util.Objects.requireNonNull(last), warnings);
  }

  private static SessionFolder create(Path beside, String athlete, Clock clock) throws UserError {
    LocalDate today = LocalDate.now(clock);
    String name = athlete.strip().replaceAll("[^\\p{L}\\p{N}_-]+", "-") + "-" + today;
    return Sessions.create(
        beside.toAbsolutePath().resolveSibling(name), athlete, today, Session.Facts.NONE);
  }

  private static void closeQuietly(SessionFolder folder) {
    try {
      folder.close();
    } catch (StoreException e) {
      // The error that led here is the one to tell; nothing was written to this session.
    }
  }
}
