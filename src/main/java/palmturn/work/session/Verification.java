package palmturn.work.session;

import java.util.ArrayList;
import java.util.List;
import palmturn.store.SessionFolder;
import palmturn.trial.Session;
import palmturn.trial.Trial;
import palmturn.trial.TrialId;

/** The check of a session as a whole. */
public final class Verification {
  private Verification() {}

  /** Returns the problems of a session's files, a line each; empty if there are none. */
  public static List<String> problems(SessionFolder folder) {
    List<String> problems = new ArrayList<>(folder.damaged().values());
    problems.addAll(folder.checkClips());
    Session session = folder.session();
    List<TrialId> there = folder.trials().stream().map(Trial::id).toList();
    for (TrialId id : session.filmed()) {
      if (!there.contains(id) && !folder.damaged().containsKey(id)) {
        problems.add("session.json names %s, but it has no file".formatted(id.name()));
      }
    }
    for (TrialId id : there) {
      if (session.block(id.block()).isEmpty()) {
        problems.add(
            "%s belongs to block %s, which session.json does not have"
                .formatted(id.name(), id.block()));
      }
    }
    return problems;
  }
}
