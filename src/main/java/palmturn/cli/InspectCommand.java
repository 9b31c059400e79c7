package palmturn.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import palmturn.clip.FrameTable;
import palmturn.trial.ClipFacts;
import palmturn.work.session.Inspection;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

@Command(
    name = "inspect",
    description = "Tells a clip's facts, and whether it is fit to be scored.")
final class InspectCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Parameters(arity = "1..*", paramLabel = "CLIP", description = "Recorded clips.")
  private List<Path> clips;

  @Option(names = "--json", description = "Print the facts as JSON.")
  private boolean json;

  @Option(
      names = "--frames",
      description = "Print each shown frame's time in seconds, one a line, and nothing else.")
  private boolean frames;

  @Override
  public Integer call() throws Exception {
    if (frames) {
      for (Path clip : clips) {
        FrameTable table = Inspection.frames(clip);
        for (int i = 0; i < table.size(); i++) {
          Output.print(spec, "%.6f", table.timeS(i));
        }
      }
      return PalmturnCommand.DONE;
    }
    List<ClipFacts> facts = new ArrayList<>();
    for (Path clip : clips) {
      facts.add(Inspection.facts(clip));
    }
    if (json) {
      spec.commandLine().getOut().println(Inspection.json(facts));
    } else {
      facts.forEach(each -> Output.printText(spec, FactsText.of(each)));
    }
    return PalmturnCommand.DONE;
  }
}
