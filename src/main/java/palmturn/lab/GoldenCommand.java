package palmturn.lab;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import palmturn.cli.Home;
import palmturn.cli.PalmturnCommand;
import palmturn.lab.golden.GoldenOutput;
import palmturn.trial.UserError;
import palmturn.work.Demo;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

@Command(
    name = "golden",
    description = {
      "Writes what the commands print for the demo, its report, CSV and WebVTT, and the estimates of "
          + "the bundled clips and of further folders, so that two versions of the program can be compared "
          + "byte for byte: diff -r DIR-BEFORE DIR-AFTER."
    })
final class GoldenCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Parameters(index = "0", paramLabel = "DIR", description = "A new folder.")
  private Path dir;

  @Parameters(
      index = "1..*",
      paramLabel = "FOLDER",
      description = "Folders of more clips, each NAME.mp4 with its NAME.truth.json beside it.")
  private List<Path> folders = List.of();

  @Override
  public Integer call() throws UserError, IOException {
    if (Files.exists(dir)) {
      throw new UserError(dir + " is there already: name a new folder");
    }
    GoldenOutput output = GoldenOutput.into(dir, Home.folder());
    output.demo();
    output.estimates(Demo.bundledClips(Home.folder()));
    for (Path folder : folders) {
      output.estimates(folder);
    }
    output
        .failed()
        .forEach(each -> spec.commandLine().getErr().println("palmturn: failed: " + each));
    return output.failed().isEmpty() ? PalmturnCommand.DONE : PalmturnCommand.WRONG_DATA;
  }
}
