package palmturn.cli;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import palmturn.work.pack.Unpacking;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

@Command(
    name = "unpack",
    description = {
      "Makes a session of a pack, or brings the pack's marks into the session it was made from.",
      "Every file is checked; a reading that has changed on both sides is kept twice."
    })
final class UnpackCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Parameters(index = "0", paramLabel = "FILE", description = "The pack.")
  private Path file;

  @Option(
      names = "--into",
      paramLabel = "SESSION",
      description =
          "A session's folder, or one that is not there yet; ATHLETE-DATE beside the pack if left"
              + " out.")
  private @Nullable Path into;

  @Override
  public Integer call() throws Exception {
    Path folder =
        into != null ? into : file.toAbsolutePath().resolveSibling(Unpacking.folderName(file));
    Unpacking.Unpacked done = Unpacking.unpack(file, folder);
    done.notes().forEach(note -> Output.warn(spec, note));
    Output.print(
        spec, done.fresh() ? "made the session %s" : "brought into the session %s", done.session());
    return PalmturnCommand.DONE;
  }
}
