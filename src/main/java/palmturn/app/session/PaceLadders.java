package palmturn.app.session;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import org.jspecify.annotations.Nullable;
import palmturn.app.look.Sentence;
import palmturn.app.tasks.Tasks;
import palmturn.measure.Limits;
import palmturn.measure.PaceLadder;
import palmturn.store.SessionFolder;
import palmturn.work.reel.ClickTracks;
import palmturn.work.score.LimitsInForce;
import palmturn.work.score.Scoring;

/** The paces of each hand's extra trials to a click track, and the tracks to film them to. */
public final class PaceLadders {
  private final Tasks tasks;
  private final ReadOnlyObjectWrapper<List<PaceLadder>> hands =
      new ReadOnlyObjectWrapper<>(List.of());
  private final ReadOnlyStringWrapper words = new ReadOnlyStringWrapper("");
  private @Nullable SessionFolder asked;

  /**
   * Knows nothing yet.
   *
   * @param tasks scores the session and writes the tracks
   */
  public PaceLadders(Tasks tasks) {
    this.tasks = tasks;
  }

  /** The ladder of each hand whose own best is known. */
  public ReadOnlyObjectProperty<List<PaceLadder>> handsProperty() {
    return hands.getReadOnlyProperty();
  }

  /** The state of the search, the files written, or the reason for none, a sentence. */
  public ReadOnlyStringProperty wordsProperty() {
    return words.getReadOnlyProperty();
  }

  /**
   * Works out the paces of a session.
   *
   * @param settings the folder of the user's settings
   */
  public void compute(SessionFolder session, Path settings) {
    asked = session;
    hands.set(List.of());
    words.set("Looking for each hand’s own best …");
    tasks.run(
        () -> {
          Limits limits = LimitsInForce.of(settings, session.folder()).limits();
          return PaceLadder.of(Scoring.score(session, null, limits));
        },
        found -> {
          if (asked == session) {
            hands.set(found);
            words.set(
                found.isEmpty()
                    ? "No hand has a rate yet: mark a trial of each, and its paces show here."
                    : "");
          }
        },
        problem -> {
          if (asked == session) {
            words.set(Sentence.of(String.valueOf(problem.getMessage())));
          }
        });
  }

  /** Writes the tracks of all paces into a folder; one that is there has the same clicks. */
  public void save(Path folder) {
    List<PaceLadder> now = hands.get();
    tasks.run(
        () -> {
          List<Path> files = new ArrayList<>();
          for (PaceLadder ladder : now) {
            for (double pace : ladder.pacesSlapsPerS()) {
              files.add(ClickTracks.ladder(folder, ladder.hand(), pace, true));
            }
          }
          return files;
        },
        files ->
            words.set(
                String.format(
                    Locale.ROOT,
                    "Written to %s: %d tracks, from %s on.",
                    folder,
                    files.size(),
                    files.get(0).getFileName())),
        problem -> words.set(Sentence.of(String.valueOf(problem.getMessage()))));
  }
}
