package palmturn.lab;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import palmturn.cli.PalmturnCommand;
import palmturn.lab.networks.NetworkTimes;
import palmturn.trial.UserError;
import palmturn.work.models.LandmarkModels;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

@Command(
    name = "networks",
    description = {
      "Times each landmark network on one photo, with one thread and with two, and prints the "
          + "process's resident memory; on a quiet computer with Linux."
    })
final class NetworksCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Parameters(paramLabel = "PHOTO", description = "A photo of a hand.")
  private Path photo;

  @Override
  public Integer call() throws Exception {
    Path networks = LandmarkModels.ofThisUser().installed();
    if (networks == null) {
      throw new UserError(
          "the landmark networks are not installed: run tools/get-landmark-models first");
    }
    if (!Files.isReadable(photo)) {
      throw new UserError(photo + " is not there");
    }
    NetworkTimes.print(photo, networks, spec.commandLine().getOut());
    return PalmturnCommand.DONE;
  }
}
