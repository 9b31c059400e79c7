package palmturn.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import palmturn.store.SessionFolder;
import palmturn.trial.UserError;
import palmturn.work.reel.Reels;
import palmturn.work.session.Sessions;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

@Command(
    name = "reel",
    description = {
      "Writes a short clip of a trial's worst moments and its cleanest second, in slow motion",
      "with the marks drawn in. It has no sound, and no place, device or name in it."
    })
final class ReelCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Parameters(index = "0", paramLabel = "TRIAL", description = "As SESSION/right-baseline-1.")
  private Path trial;

  @Option(
      names = "--out",
      paramLabel = "FILE",
      description = "Where to; SESSION/report/TRIAL-reel.mp4 if left out.")
  private @Nullable Path out;

  @Option(
      names = "--reading",
      paramLabel = "NAME",
      description = "Whose marks, estimate or settled; as score chooses if left out.")
  private @Nullable String reading;

  @Option(
      names = "--show",
      paramLabel = "hands|whole",
      description =
          "How much of the picture: hands and elbow alone, so that no face is in it, or all of it;"
              + " the hands where they are known if left out.")
  private Show show = Show.AUTO;

  @Option(
      names = "--alone",
      description = "Leave the other hand out, which else stands beside it where it was read too.")
  private boolean alone;

  @Option(names = "--force", description = "Put it in place of the file named with --out.")
  private boolean force;

  /** The part of the picture that is shown. */
  enum Show {
    AUTO(Reels.View.HANDS_IF_KNOWN),
    HANDS(Reels.View.HANDS),
    WHOLE(Reels.View.WHOLE);

    private final Reels.View view;

    Show(Reels.View view) {
      this.view = view;
    }
  }

  @Override
  public Integer call() throws Exception {
    Sessions.TrialPath path = Sessions.TrialPath.parse(trial);
    if (out != null && Files.exists(out) && !force) {
      throw new UserError(out + " is there already: name another file, or say --force");
    }
    try (SessionFolder folder = Sessions.openReadOnly(path.session());
        TerminalProgress bar = TerminalProgress.on(spec)) {
      folder.notices().forEach(notice -> Output.warn(spec, notice));
      Path file =
          out != null
              ? out
              : folder.folder().resolve("report").resolve(path.id().name() + "-reel.mp4");
      double lengthS =
          Reels.write(
              folder, new Reels.ReelRequest(path.id(), reading, show.view, !alone), file, bar);
      Output.print(spec, "wrote %s, %.0f s", file, lengthS);
    }
    return PalmturnCommand.DONE;
  }
}
