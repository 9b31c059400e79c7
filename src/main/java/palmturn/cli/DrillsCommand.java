package palmturn.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.LinkedHashSet;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import palmturn.advise.Aim;
import palmturn.advise.Caution;
import palmturn.advise.DrillLibrary;
import palmturn.advise.LibraryDrill;
import palmturn.work.Drills;
import palmturn.work.Sessions;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

@Command(name = "drills", description = "Lists the drills, or writes the library to be edited.")
final class DrillsCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Parameters(
      arity = "0..1",
      paramLabel = "SESSION",
      description = "A session's folder: its own drills.json counts too.")
  private @Nullable Path session;

  @Option(names = "--json", description = "Print the library as JSON.")
  private boolean json;

  @Option(
      names = "--write",
      paramLabel = "FILE",
      description = "Write the program's own library to a file, to be edited.")
  private @Nullable Path write;

  @Option(names = "--force", description = "Replace a file that is there.")
  private boolean force;

  @Override
  public Integer call() throws Exception {
    if (write != null) {
      Drills.write(write, force);
      Say.to(spec, "wrote %s: edit it, and put it where it counts", write);
      where();
      return PalmturnCommand.DONE;
    }
    if (session != null) {
      // Its own drills lie in it, so that a slip in its name must not pass for a session without.
      Sessions.openReadOnly(session).close();
    }
    DrillLibrary library = Drills.library(Home.settings(), session);
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
    where();
    return PalmturnCommand.DONE;
  }

  private void print(LibraryDrill drill) {
    PrintWriter out = spec.commandLine().getOut();
    out.printf(
        "%s: %s%n",
        drill.code(), drill.aims().stream().map(Aim::code).collect(Collectors.joining(", ")));
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

  private void where() {
    Say.to(
        spec,
        "Your own drills: %s; a session's: %s in its folder, which goes before it.",
        Home.settings().resolve(Drills.FILE),
        Drills.FILE);
  }
}
