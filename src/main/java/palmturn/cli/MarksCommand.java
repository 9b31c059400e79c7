package palmturn.cli;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import palmturn.store.SessionFolder;
import palmturn.trial.Reading;
import palmturn.work.report.MarksFiles;
import palmturn.work.session.Sessions;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

@Command(
    name = "marks",
    description = "Writes or reads a reading's marks as CSV.",
    subcommands = {MarksCommand.Export.class, MarksCommand.Import.class})
final class MarksCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Override
  public Integer call() {
    throw new ParameterException(spec.commandLine(), "say export or import");
  }

  @Command(name = "export", description = "Writes a reading's marks to a CSV file.")
  static final class Export implements Callable<Integer> {
    @Spec private CommandSpec spec;

    @Parameters(index = "0", paramLabel = "TRIAL", description = "As SESSION/right-baseline-1.")
    private Path trial;

    @Parameters(index = "1", paramLabel = "FILE", description = "The CSV file; - for the output.")
    private Path file;

    @Option(
        names = "--reader",
        paramLabel = "NAME",
        description = "Whose; the only one if left out.")
    private @Nullable String reader;

    @Override
    public Integer call() throws Exception {
      Sessions.TrialPath path = Sessions.TrialPath.parse(trial);
      try (SessionFolder folder = Sessions.openReadOnly(path.session())) {
        String csv = MarksFiles.export(folder, path.id(), reader);
        if (file.toString().equals("-")) {
          spec.commandLine().getOut().print(csv);
        } else {
          MarksFiles.write(file, csv);
        }
      }
      return PalmturnCommand.DONE;
    }
  }

  @Command(name = "import", description = "Reads a CSV file as a reader's marks.")
  static final class Import implements Callable<Integer> {
    @Spec private CommandSpec spec;

    @Parameters(index = "0", paramLabel = "TRIAL", description = "As SESSION/right-baseline-1.")
    private Path trial;

    @Parameters(index = "1", paramLabel = "FILE", description = "The CSV file.")
    private Path file;

    @Option(
        names = "--reader",
        paramLabel = "NAME",
        required = true,
        description = "Whose marks they are.")
    private String reader;

    @Option(
        names = "--replace",
        description = "Put them in place of the marks that this reader already has.")
    private boolean replace;

    @Override
    public Integer call() throws Exception {
      Sessions.TrialPath path = Sessions.TrialPath.parse(trial);
      try (SessionFolder folder = Sessions.open(path.session())) {
        Reading reading = MarksFiles.importMarks(folder, path.id(), file, reader, replace);
        Output.print(
            spec,
            "%s: %d marks and %d spans by %s",
            path.id().name(),
            reading.slaps().size(),
            reading.spans().size(),
            reader);
      }
      return PalmturnCommand.DONE;
    }
  }
}
