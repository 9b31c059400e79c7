package palmturn.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import palmturn.store.SessionFolder;
import palmturn.trial.UserError;
import palmturn.work.pack.Packing;
import palmturn.work.session.Sessions;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

@Command(
    name = "pack",
    description = {
      "Puts a session into one file to send: marks, messages, and the clips without",
      "place, device, name or moment of filming."
    })
final class PackCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Parameters(paramLabel = "SESSION", description = "The session's folder.")
  private Path session;

  @Option(
      names = "--out",
      paramLabel = "FILE",
      description = "Where to; SESSION.palmturn.zip beside the session if left out.")
  private @Nullable Path out;

  @Option(
      names = "--crop",
      description =
          "Leave nothing but hands and elbow in the clips, so that no face is in them; coded anew.")
  private boolean crop;

  @Option(
      names = "--sound",
      paramLabel = "slaps|whole|none",
      description =
          "With --crop: what of the sound is kept. Only 40 ms around each slap if left out, so that"
              + " no speech is in it.")
  private Packing.@Nullable SoundAs sound;

  @Option(names = "--no-clips", description = "Leave the clips out.")
  private boolean noClips;

  @Option(names = "--force", description = "Put it in place of a file of that name.")
  private boolean force;

  @Override
  public Integer call() throws Exception {
    if (crop && noClips) {
      throw new picocli.CommandLine.ParameterException(
          spec.commandLine(), "--crop and --no-clips don't go together");
    }
    if (sound != null && !crop) {
      throw new picocli.CommandLine.ParameterException(
          spec.commandLine(), "--sound goes with --crop; other clips keep their sound");
    }
    try (SessionFolder folder = Sessions.openReadOnly(session);
        TerminalProgress bar = TerminalProgress.on(spec)) {
      folder.notices().forEach(notice -> Output.warn(spec, notice));
      Path whole = folder.folder().toAbsolutePath().normalize();
      Path file = out != null ? out : whole.resolveSibling(whole.getFileName() + ".palmturn.zip");
      if (Files.exists(file) && !force) {
        throw new UserError(file + " is there already: name another file, or say --force");
      }
      Packing.ClipsAs as =
          noClips
              ? Packing.ClipsAs.LEFT_OUT
              : crop ? Packing.ClipsAs.HANDS : Packing.ClipsAs.CLEARED;
      List<String> notes =
          Packing.write(
              folder, as, sound == null ? Packing.SoundAs.SLAPS : sound, file, Clocks.SYSTEM, bar);
      Output.print(spec, "wrote %s, %.1f MB", file, Files.size(file) / 1e6);
      notes.forEach(note -> Output.print(spec, "%s", note));
    }
    return PalmturnCommand.DONE;
  }
}
