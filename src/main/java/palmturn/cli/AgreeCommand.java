package palmturn.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import palmturn.work.settle.ReaderAgreement;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

@Command(
    name = "agree",
    description = {
      "Tells how well two readers agree, over all trials that both have finished.",
      "Given for independent readings alone: started from nothing, the estimate out of sight."
    })
final class AgreeCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Parameters(arity = "1..*", paramLabel = "SESSION", description = "Sessions' folders.")
  private List<Path> sessions;

  @Option(
      names = "--readers",
      paramLabel = "A,B",
      split = ",",
      required = true,
      description = "Which two; estimate stands for what the program found.")
  private List<String> readers;

  @Mixin private ComparisonOptions comparedBy = new ComparisonOptions();

  @Option(names = "--json", description = "Print the figures as JSON.")
  private boolean json;

  @Override
  public Integer call() throws Exception {
    if (readers.size() != 2) {
      throw new ParameterException(
          spec.commandLine(), "--readers takes two names with a comma between, such as A,B");
    }
    ReaderAgreement.AgreementResult result =
        ReaderAgreement.of(
            sessions,
            new ReaderAgreement.AgreementRequest(
                readers.get(0).strip(),
                readers.get(1).strip(),
                comparedBy.toleranceS(),
                comparedBy.removeOffset()));
    result.notices().forEach(notice -> Output.warn(spec, notice));
    result.leftOut().forEach((trial, why) -> Output.warn(spec, trial + " left out: " + why));
    if (json) {
      spec.commandLine().getOut().println(result.json().strip());
    } else {
      Output.printText(spec, AgreeText.of(result));
    }
    return PalmturnCommand.DONE;
  }
}
