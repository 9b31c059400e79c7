package palmturn.cli;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import palmturn.measure.Limits;
import palmturn.measure.PaceLadder;
import palmturn.settings.UserFolders;
import palmturn.store.SessionFolder;
import palmturn.work.reel.ClickTracks;
import palmturn.work.score.LimitsInForce;
import palmturn.work.score.Scoring;
import palmturn.work.session.Sessions;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

@Command(
    name = "ladder",
    description =
        "Prints the paces of each hand's pace ladder: extra trials to a click track, for its clean"
            + " ceiling.")
final class LadderCommand implements Callable<Integer> {
  private static final double SECONDS = 60;

  @Spec private CommandSpec spec;

  @Parameters(paramLabel = "SESSION", description = "The session's folder.")
  private Path session;

  @Option(
      names = "--reading",
      paramLabel = "NAME",
      description = "Whose readings own best comes from, as in score.")
  private @Nullable String reading;

  @Option(
      names = "--clicks",
      paramLabel = "DIR",
      description = "Write a click track for each pace into this folder, as WAV files.")
  private @Nullable Path clicks;

  @Option(names = "--force", description = "Replace click tracks that are there.")
  private boolean force;

  @Override
  public Integer call() throws Exception {
    try (SessionFolder folder = Sessions.openReadOnly(session)) {
      folder.notices().forEach(notice -> Output.warn(spec, notice));
      Limits limits = LimitsInForce.of(UserFolders.settings(), session).limits();
      for (PaceLadder ladder : PaceLadder.of(Scoring.score(folder, reading, limits))) {
        Output.print(
            spec, "%s hand, best %.2f slaps/s:", ladder.hand().code(), ladder.bestSlapsPerS());
        for (double pace : ladder.pacesSlapsPerS()) {
          Output.print(spec, "  %.1f slaps/s, %.0f clicks a minute", pace, pace * SECONDS);
          if (clicks != null) {
            Output.print(
                spec, "  wrote %s", ClickTracks.ladder(clicks, ladder.hand(), pace, force));
          }
        }
      }
      Output.print(spec, "One trial at each, a slap on every click, which palmturn clicks writes:");
      Output.print(spec, "  palmturn clicks --pace 3.0 pace.wav");
      Output.print(spec, "Add it with its pace, such as:");
      Output.print(spec, "  palmturn add %s CLIP --hand right --pace 3.0", session);
    }
    return PalmturnCommand.DONE;
  }
}
