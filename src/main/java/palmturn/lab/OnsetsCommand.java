package palmturn.lab;

import java.util.concurrent.Callable;
import palmturn.cli.PalmturnCommand;
import palmturn.lab.onsets.OnsetComparison;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

@Command(
    name = "onsets",
    description = {
      "Compares detected sound onsets with known ones, as a Markdown table; those of aubioonset "
          + "beside them where it is installed (Debian: aubio-tools)."
    })
final class OnsetsCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Override
  public Integer call() throws Exception {
    boolean aubio = OnsetComparison.aubioInstalled();
    if (!aubio) {
      spec.commandLine()
          .getErr()
          .println("palmturn: aubioonset is not installed: Palmturn alone is shown");
    }
    OnsetComparison.print(spec.commandLine().getOut(), aubio);
    return PalmturnCommand.DONE;
  }
}
