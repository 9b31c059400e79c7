package palmturn.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import palmturn.measure.Limits;
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
      "Every file is checked, and nothing here gives way: what differs is kept beside, named by its",
      "pack. What came, and what was left out and why, is listed. No page is taken from a pack."
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

  @Option(
      names = "--limits",
      description =
          "Let the pack's own limits and drills count, where the session has none; without this they"
              + " are only shown.")
  private boolean limits;

  @Override
  public Integer call() throws Exception {
    Path folder =
        into != null ? into : file.toAbsolutePath().resolveSibling(Unpacking.folderName(file));
    Unpacking.Unpacked done = Unpacking.unpack(file, folder, limits, Clocks.SYSTEM);
    Output.print(
        spec,
        done.fresh() ? "made the session %s of %s" : "brought into the session %s, from %s",
        done.session(),
        done.pack());
    list("brought", done.brought());
    list("left", done.left());
    Limits own = done.standards().limits();
    if (own != null) {
      Output.print(spec, "the pack has limits of its own, which do not count here:");
      LimitsCommand.lines(own).forEach(line -> Output.print(spec, "  %s", line));
    }
    if (!done.standards().drills().isEmpty()) {
      String codes = String.join(", ", done.standards().drills());
      Output.print(spec, "the pack has drills of its own, which do not count here: %s", codes);
    }
    if (done.standards().isLeft()) {
      Output.print(spec, "unpack it again with --limits to let them count, where there are none");
    }
    return PalmturnCommand.DONE;
  }

  private void list(String what, List<String> lines) {
    lines.forEach(line -> Output.print(spec, "  %s: %s", what, line));
  }
}
