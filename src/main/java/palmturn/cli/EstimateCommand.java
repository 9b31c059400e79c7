package palmturn.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import palmturn.settings.UserFolders;
import palmturn.trial.Hand;
import palmturn.trial.Mirrored;
import palmturn.trial.UserError;
import palmturn.work.estimate.EstimateBatch;
import palmturn.work.estimate.EstimatesFile;
import palmturn.work.estimate.Estimating;
import palmturn.work.models.LandmarkModels;
import palmturn.work.search.InputPaths;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

@Command(
    name = "estimate",
    description = {
      "Finds slaps, rotation and elbow drift by itself, from picture and sound.",
      "A session's trials get their estimate stored, in place of the one before; a clip's is only"
          + " printed. A folder that is no session stands for all clips in it. Many are done in no"
          + " particular order, and one that fails does not stop the others. Places are pixels of the upright picture, from its upper left corner."
    })
final class EstimateCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Parameters(
      arity = "1..*",
      paramLabel = "SESSION|CLIP|FOLDER",
      description = "Folders of sessions, recorded clips, or folders of clips.")
  private List<Path> given;

  @Option(
      names = "--hand",
      description =
          "The moving hand, the athlete's own, left or right: must be said for a clip; in a session"
              + " only that hand's trials are estimated.")
  private @Nullable Hand hand;

  @Option(names = "--trial", paramLabel = "T", description = "Only this trial of the session.")
  private @Nullable String trial;

  @Option(
      names = "--jobs",
      paramLabel = "N",
      defaultValue = "1",
      description = "How many at the same time: ${DEFAULT-VALUE} if left out.")
  private int jobs;

  @Option(names = "--json", description = "Print all that was found as JSON; a line each for many.")
  private boolean json;

  @Mixin private EstimateOptions options;

  @Option(names = "--from", paramLabel = "S", description = "Start of the trial in the clip.")
  private @Nullable Double fromS;

  @Option(names = "--to", paramLabel = "S", description = "End of the trial in the clip.")
  private @Nullable Double toS;

  @Option(names = "--mirrored", description = "The clip shows the athlete mirrored.")
  private boolean mirrored;

  @Option(
      names = "--capture-fps",
      paramLabel = "F",
      description = "Frames a second at capture, for slow motion whose file does not say.")
  private @Nullable Double captureFps;

  @Option(
      names = "--recursive",
      description =
          "Look into the folders in a folder, too; sessions among them are taken as sessions.")
  private boolean recursive;

  @Option(
      names = "--out",
      paramLabel = "FILE",
      description =
          "Add a line of JSON each to this file, also for those that fail, and leave out what has a"
              + " line there: a clip of the same file name, SHA-256 and hand, whatever else is"
              + " asked. So the same command goes on where it stopped.")
  private @Nullable Path out;

  @Option(names = "--retry", description = "Try again what failed before, by the file of --out.")
  private boolean retry;

  @Override
  public Integer call() throws Exception {
    InputPaths found = InputPaths.of(given, recursive);
    refuseWhatDoesNotFit(found);
    if (options.wantsShape() && LandmarkModels.ofThisUser().installed() == null) {
      Output.warn(
          spec,
          "shape is not installed and is left out: "
              + LandmarkModels.TOOL
              + " brings it, palmturn models says what is there");
    }
    EstimateBatch.Selection wanted =
        new EstimateBatch.Selection(
            found.clips().stream().map(this::clip).toList(),
            found.sessions(),
            hand,
            trial,
            options.asked(),
            jobs);
    boolean one = out == null && given.size() == 1 && !Files.isDirectory(given.get(0));
    try (Interruption interruption = Interruption.listen();
        EstimatesFile file = out == null ? null : EstimatesFile.open(out, retry)) {
      if (file != null && file.repaired()) {
        Output.warn(spec, out + " ended in half a line, which was taken out");
      }
      EstimateBatch.Counts counts;
      try (TerminalProgress bar = TerminalProgress.on(spec, interruption::asked)) {
        EstimateBatch batch =
            new EstimateBatch(Estimating.standard(UserFolders.settings()), wanted, file);
        counts = batch.run(bar, new Printed(one, bar));
      }
      found.errors().forEach(this::report);
      if (!one) {
        spec.commandLine().getErr().println("palmturn: " + sentence(counts, found.errors().size()));
      }
      spec.commandLine().getErr().flush();
      boolean done = counts.failed() + counts.failedBefore() == 0 && !counts.stopped();
      return done && found.errors().isEmpty() ? PalmturnCommand.DONE : PalmturnCommand.WRONG_DATA;
    }
  }

  private Estimating.Clip clip(Path path) {
    return new Estimating.Clip(
        path,
        Objects.requireNonNull(hand, "it was asked for"),
        mirrored ? Mirrored.TRUE : Mirrored.UNKNOWN,
        fromS,
        toS,
        captureFps);
  }

  private void refuseWhatDoesNotFit(InputPaths found) {
    boolean clips = !found.clips().isEmpty();
    if (jobs < 1) {
      throw wrong("--jobs must be 1 or more");
    }
    if (clips && hand == null) {
      throw wrong("say which hand moves in the clip: --hand left or --hand right");
    }
    if (clips && trial != null) {
      throw wrong("--trial belongs to a session, not to a clip");
    }
    if (fromS != null && toS != null && !(toS > fromS)) {
      throw wrong("--to must be after --from");
    }
    if (captureFps != null && !(captureFps > 0 && captureFps <= 100_000)) {
      throw wrong("--capture-fps must be above 0");
    }
    boolean ofClip = fromS != null || toS != null || captureFps != null || mirrored;
    if (!found.sessions().isEmpty() && ofClip) {
      throw wrong(
          "--from, --to, --mirrored and --capture-fps belong to a clip; a session's trials have"
              + " their own");
    }
    if (!found.sessions().isEmpty() && options.ofAthlete()) {
      throw wrong(
          "--forearm, --hand-length and --stature belong to a clip; a session's own facts"
              + " count, which the app changes");
    }
    boolean oneClip = found.sessions().isEmpty() && found.clips().size() == 1;
    boolean oneTrial = found.sessions().size() == 1 && !clips && trial != null;
    if (!oneClip && !oneTrial && options.ofOneClip()) {
      throw wrong(
          "--hand-region, --elbow, --trunk, --scale and --side-at are true of one clip: name one"
              + " clip, or one session and --trial");
    }
    if (retry && out == null) {
      throw wrong("--retry belongs to --out");
    }
  }

  private String sentence(EstimateBatch.Counts counts, int unread) {
    List<String> parts = new ArrayList<>();
    parts.add(counts.estimated() + " estimated");
    parts.add(counts.failed() + unread + " failed");
    if (counts.leftOut() > 0) {
      parts.add(String.format(Locale.ROOT, "%d left out, which %s has", counts.leftOut(), out));
    }
    if (counts.failedBefore() > 0) {
      parts.add(
          String.format(
              Locale.ROOT,
              "%d left out, which failed before (--retry tries again)",
              counts.failedBefore()));
    }
    return (counts.stopped() ? "stopped; " : "") + String.join(", ", parts);
  }

  /** Prints what happens as it happens. */
  private final class Printed implements EstimateBatch.Listener {
    private final boolean one;
    private final TerminalProgress bar;

    Printed(boolean one, TerminalProgress bar) {
      this.one = one;
      this.bar = bar;
    }

    @Override
    public void ended(EstimateBatch.Outcome ended) {
      bar.clearLine();
      if (ended.error() != null) {
        report(ended.error());
      }
      PrintWriter to = spec.commandLine().getOut();
      String text = text(ended);
      if (text != null) {
        to.println(text);
      } else if (json && one && ended.error() == null) {
        print(ended, to);
      }
      to.flush();
    }

    private void print(EstimateBatch.Outcome ended, PrintWriter to) {
      try {
        ended.print(to);
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }

    private @Nullable String text(EstimateBatch.Outcome ended) {
      if (json) {
        return one ? null : ended.jsonLine();
      }
      return out == null && ended.error() == null ? EstimateText.of(ended) : null;
    }

    @Override
    public void notice(String line) {
      bar.clearLine();
      Output.warn(spec, line);
    }
  }

  private void report(UserError error) {
    PalmturnCommand root = (PalmturnCommand) spec.root().userObject();
    root.report(error, spec.commandLine().getErr());
  }

  private ParameterException wrong(String why) {
    return new ParameterException(spec.commandLine(), why);
  }
}
