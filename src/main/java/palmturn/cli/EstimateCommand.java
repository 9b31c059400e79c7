package palmturn.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import palmturn.store.SessionFolder;
import palmturn.trial.Hand;
import palmturn.trial.Mirrored;
import palmturn.trial.Trial;
import palmturn.work.Estimating;
import palmturn.work.Sessions;
import palmturn.work.UserError;
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
          + " printed. Places are pixels of the upright picture, from its upper left corner."
    })
final class EstimateCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Parameters(
      arity = "1..*",
      paramLabel = "SESSION|CLIP",
      description = "Folders of sessions, or recorded clips.")
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

  private boolean failed;

  @Override
  public Integer call() throws Exception {
    List<Path> sessions = given.stream().filter(Files::isDirectory).toList();
    List<Path> clips = given.stream().filter(path -> !Files.isDirectory(path)).toList();
    refuseWhatDoesNotFit(sessions, clips);
    Estimating.Asked asked = options.asked();
    Estimating estimating = Estimating.standard();
    boolean one = clips.size() == 1 && sessions.isEmpty();
    Consumer<Estimating.Ended> sink = ended -> show(ended, one);
    for (Path session : sessions) {
      try {
        ofSession(estimating, session, asked, sink);
      } catch (UserError e) {
        failed(e);
      }
    }
    if (!clips.isEmpty() && hand != null) {
      Hand moving = hand;
      Mirrored mirror = mirrored ? Mirrored.TRUE : Mirrored.UNKNOWN;
      List<Estimating.Clip> all =
          clips.stream()
              .map(path -> new Estimating.Clip(path, moving, mirror, fromS, toS, captureFps))
              .toList();
      try (Bar bar = Bar.on(spec)) {
        estimating.clips(all, jobs, asked, bar, sink);
      }
    }
    return failed ? PalmturnCommand.WRONG_DATA : PalmturnCommand.DONE;
  }

  private void ofSession(
      Estimating estimating, Path session, Estimating.Asked asked, Consumer<Estimating.Ended> sink)
      throws Exception {
    try (SessionFolder folder = Sessions.open(session);
        Bar bar = Bar.on(spec)) {
      folder.notices().forEach(notice -> Say.warn(spec, notice));
      List<Trial> trials = new ArrayList<>(folder.trials());
      trials.removeIf(each -> hand != null && each.id().hand() != hand);
      trials.removeIf(each -> trial != null && !each.id().name().equals(trial));
      if (trials.isEmpty()) {
        throw new UserError(
            trial == null && hand == null
                ? session + " has no trial yet: add a clip with palmturn add"
                : session + " has no such trial");
      }
      estimating.trials(folder, trials, jobs, asked, bar, sink);
    }
  }

  private void refuseWhatDoesNotFit(List<Path> sessions, List<Path> clips) {
    if (jobs < 1) {
      throw wrong("--jobs must be 1 or more");
    }
    if (!clips.isEmpty() && hand == null) {
      throw wrong("say which hand moves in the clip: --hand left or --hand right");
    }
    if (!clips.isEmpty() && trial != null) {
      throw wrong("--trial belongs to a session, not to a clip");
    }
    if (fromS != null && toS != null && !(toS > fromS)) {
      throw wrong("--to must be after --from");
    }
    if (captureFps != null && !(captureFps > 0 && captureFps <= 100_000)) {
      throw wrong("--capture-fps must be above 0");
    }
    boolean ofClip = fromS != null || toS != null || captureFps != null || mirrored;
    if (!sessions.isEmpty() && ofClip) {
      throw wrong(
          "--from, --to, --mirrored and --capture-fps belong to a clip; a session's trials have"
              + " their own");
    }
    boolean one = given.size() == 1 && (sessions.isEmpty() || trial != null);
    if (!one && options.ofOneClip()) {
      throw wrong(
          "--hand-region, --elbow, --trunk, --scale and --side-at are true of one clip: name one"
              + " clip, or one session and --trial");
    }
  }

  private void show(Estimating.Ended ended, boolean one) {
    if (ended.error() != null) {
      failed(ended.error());
    } else if (json) {
      String text = one ? Estimating.json(ended).stripTrailing() : Estimating.jsonLine(ended);
      spec.commandLine().getOut().println(text);
    } else {
      spec.commandLine().getOut().println(EstimateText.of(ended));
    }
    spec.commandLine().getOut().flush();
  }

  private void failed(UserError error) {
    failed = true;
    PalmturnCommand root = (PalmturnCommand) spec.root().userObject();
    root.report(error, spec.commandLine().getErr());
  }

  private ParameterException wrong(String why) {
    return new ParameterException(spec.commandLine(), why);
  }
}
