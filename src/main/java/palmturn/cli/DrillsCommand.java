package palmturn.cli;

import java.io.PrintWriter;
import java.util.LinkedHashSet;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import palmturn.advise.Caution;
import palmturn.advise.DrillAim;
import palmturn.advise.DrillLibrary;
import palmturn.advise.LibraryDrill;
import palmturn.settings.UserFolders;
import palmturn.work.score.Drills;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

@Command(name = "drills", description = "Lists the drills, or writes the library to be edited.")
final class DrillsCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Mixin private EditedOptions edited;

  @Option(names = "--json", description = "Print the library as JSON.")
  private boolean json;

  @Override
  public Integer call() throws Exception {
    if (edited.written(Drills::write, Drills.FILE)) {
      return PalmturnCommand.DONE;
    }
    DrillLibrary library = Drills.library(UserFolders.settings(), edited.session());
    if (json) {
      spec.commandLine().getOut().print(Drills.json(library));
      return PalmturnCommand.DONE;
    }
    Set<Caution> cautions = new LinkedHashSet<>(Set.of(Caution.PAIN));
    for (LibraryDrill drill : library.drills()) {
      print(drill);
      cautions.addAll(drill.cautions());
    }
    cautions.stream()
        .sorted()
        .flatMap(caution -> TrainText.wrapped("", caution.text()).stream())
        .forEach(spec.commandLine().getOut()::println);
    spec.commandLine().getOut().println();
    edited.where(Drills.FILE);
    return PalmturnCommand.DONE;
  }

  private void print(LibraryDrill drill) {
    PrintWriter out = spec.commandLine().getOut();
    out.printf(
        "%s: %s%n",
        drill.code(), drill.aims().stream().map(DrillAim::code).collect(Collectors.joining(", ")));
    for (String part :
        new String[] {
          drill.how(),
          drill.dose(),
          drill.harderWhen(),
          "Retest: " + drill.retest(),
          "Stop: " + drill.stop(),
          "Source: " + drill.source()
        }) {
      TrainText.wrapped("  ", part).forEach(out::println);
    }
    out.println();
  }
}
