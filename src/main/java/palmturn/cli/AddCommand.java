package palmturn.cli;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import palmturn.store.SessionFolder;
import palmturn.trial.Block;
import palmturn.trial.Hand;
import palmturn.trial.Mirrored;
import palmturn.work.session.AddClip;
import palmturn.work.session.Sessions;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

@Command(name = "add", description = "Adds a clip, or a stretch of one, as a trial.")
final class AddCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Parameters(index = "0", paramLabel = "SESSION", description = "The session's folder.")
  private Path session;

  @Parameters(index = "1", paramLabel = "CLIP", description = "The recorded clip; it is copied.")
  private Path clip;

  @Option(
      names = "--hand",
      required = true,
      description = "The moving hand, the athlete's own: left, right.")
  private Hand hand;

  @Option(
      names = "--block",
      defaultValue = Block.BASELINE,
      description = "baseline (the default), after-1, after-2 …")
  private String block;

  @Option(
      names = "--repeat",
      paramLabel = "N",
      description = "Which attempt; the next if left out.")
  private @Nullable Integer repeat;

  @Option(names = "--from", paramLabel = "S", description = "Start of the trial in the clip.")
  private @Nullable Double fromS;

  @Option(names = "--to", paramLabel = "S", description = "End of the trial in the clip.")
  private @Nullable Double toS;

  @Option(
      names = "--mirrored",
      negatable = true,
      description = "The file shows the athlete mirrored, as some front cameras do.")
  private @Nullable Boolean mirrored;

  @Option(
      names = "--pace",
      paramLabel = "R",
      description = "Slaps a second of the click track it was filmed to.")
  private @Nullable Double pace;

  @Option(
      names = "--capture-fps",
      paramLabel = "F",
      description = "Frames a second at capture, for slow motion whose file does not say.")
  private @Nullable Double captureFps;

  @Override
  public Integer call() throws Exception {
    Mirrored mirror =
        mirrored == null ? Mirrored.UNKNOWN : mirrored ? Mirrored.TRUE : Mirrored.FALSE;
    try (SessionFolder folder = Sessions.open(session)) {
      folder.notices().forEach(notice -> Output.warn(spec, notice));
      AddClip.Added added =
          AddClip.add(
              folder,
              clip,
              new AddClip.ClipRequest(hand, block, repeat, fromS, toS, mirror, pace, captureFps));
      Output.print(spec, "added %s from %s", added.trial().id().name(), clip.getFileName());
      for (String warning : added.facts().warnings()) {
        Output.warn(spec, warning);
      }
    }
    return PalmturnCommand.DONE;
  }
}
