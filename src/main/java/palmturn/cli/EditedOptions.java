package palmturn.cli;

import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import palmturn.settings.UserFolders;
import palmturn.work.session.Sessions;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Options of the commands whose file a coach may edit, in the settings or in a session. */
final class EditedOptions {
  @Spec(Spec.Target.MIXEE)
  private CommandSpec spec;

  @Parameters(
      arity = "0..1",
      paramLabel = "SESSION",
      description = "A session's folder: its own ${COMMAND-NAME}.json counts too.")
  private @Nullable Path session;

  @Option(
      names = "--write",
      paramLabel = "FILE",
      description = "Write the program's own to a file, to be edited.")
  private @Nullable Path write;

  @Option(names = "--force", description = "Replace a file that is there.")
  private boolean force;

  /** Writes the program's own. */
  interface Writing {
    void to(Path file, boolean replace) throws Exception;
  }

  /** Returns the session; null where none is named. */
  @Nullable Path session() throws Exception {
    if (session != null) {
      // Its own file lies in it, so that a slip in its name must not pass for a session without.
      Sessions.openReadOnly(session).close();
    }
    return session;
  }

  /** Writes the program's own where that is asked for; returns whether it was. */
  boolean written(Writing writing, String name) throws Exception {
    if (write == null) {
      return false;
    }
    writing.to(write, force);
    Output.print(spec, "wrote %s: edit it, and put it where it counts", write);
    where(name);
    return true;
  }

  /** Says where a file counts. */
  void where(String name) {
    Output.print(
        spec,
        "Your own %s: %s; a session's: %s in its folder, which goes before it.",
        spec.name(),
        UserFolders.settings().resolve(name),
        name);
  }
}
