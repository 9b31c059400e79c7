package palmturn.cli;

import java.nio.file.Path;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import palmturn.advise.StartingPace;
import palmturn.settings.UserFolders;
import palmturn.store.SessionFolder;
import palmturn.trial.DrillHand;
import palmturn.work.reel.ClickTracks;
import palmturn.work.score.Drills;
import palmturn.work.score.Standards;
import palmturn.work.session.Sessions;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

@Command(
    name = "clicks",
    description = {
      "Writes a click track to train or film to, as a WAV file.",
      "Low clicks count in, one for each turn there and back; then one high click for each slap."
    })
final class ClicksCommand implements Callable<Integer> {
  private static final double USUAL_S = 5;

  @Spec private CommandSpec spec;

  @Parameters(index = "0", paramLabel = "FILE.wav", description = "The file to write.")
  private Path file;

  @Option(names = "--pace", paramLabel = "R", description = "Slaps a second, 0.5 to 20.")
  private @Nullable Double pace;

  @Option(
      names = "--drill",
      paramLabel = "CODE",
      description = "Take the pace that a drill starts at, from the figures of --session.")
  private @Nullable String drill;

  @Option(names = "--session", paramLabel = "SESSION", description = "The session's folder.")
  private @Nullable Path session;

  @Option(
      names = "--hand",
      defaultValue = "both",
      description = "Whose figures with --drill: left, right, or both for the slower one's.")
  private DrillHand hand;

  @Option(
      names = "--for",
      paramLabel = "S",
      description = "Seconds from the first slap to the last, up to 600; 5 if left out.")
  private @Nullable Double forS;

  @Option(
      names = "--slaps",
      paramLabel = "N",
      description = "How many slaps instead, such as those of one set; 2 or more.")
  private @Nullable Integer slaps;

  @Option(
      names = "--count-in",
      defaultValue = "4",
      paramLabel = "N",
      description = "Clicks to count in, 0 to 16: ${DEFAULT-VALUE}.")
  private int countIn;

  @Option(names = "--force", description = "Replace a file that is there.")
  private boolean force;

  @Override
  public Integer call() throws Exception {
    double slapsPerS = pace();
    int clicks = ClickTracks.write(file, slapsPerS, lengthS(slapsPerS), countIn, force);
    Output.print(
        spec,
        "wrote %s: %d to count in, then %d clicks at %s slaps/s",
        file,
        countIn,
        clicks,
        String.format(Locale.ROOT, "%.4g", slapsPerS).replaceAll("\\.?0+$", ""));
    return PalmturnCommand.DONE;
  }

  private double lengthS(double slapsPerS) {
    if (slaps == null) {
      return forS == null ? USUAL_S : forS;
    }
    if (forS != null || slaps < 2) {
      throw new ParameterException(spec.commandLine(), "say --for S, or --slaps N with 2 or more");
    }
    return (slaps - 1) / slapsPerS;
  }

  private double pace() throws Exception {
    if (drill == null) {
      if (pace == null || session != null) {
        throw new ParameterException(
            spec.commandLine(), "say --pace R, or --drill CODE with --session SESSION");
      }
      return pace;
    }
    if (hand == DrillHand.NONE) {
      throw new ParameterException(spec.commandLine(), "--hand is left, right or both");
    }
    if (pace != null || session == null) {
      throw new ParameterException(
          spec.commandLine(), "--drill takes its pace from --session SESSION, not from --pace");
    }
    try (SessionFolder folder = Sessions.openReadOnly(session)) {
      StartingPace found =
          Drills.pace(folder, Standards.of(UserFolders.settings(), session), drill, hand);
      Output.print(spec, "%s", found.words());
      return found.slapsPerS();
    }
  }
}
