package palmturn.cli;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import palmturn.estimate.hands.ModelFile.NpmPackage;
import palmturn.measure.Decimals;
import palmturn.work.models.LandmarkModels;
import palmturn.work.models.LandmarkModels.FileState;
import palmturn.work.models.LandmarkModels.ModelStatus;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

@Command(
    name = "models",
    description = {
      "Tells whether the landmark networks are installed, which shape needs; all else works without.",
      "They are brought by tools/get-landmark-models; this program fetches nothing."
    })
final class ModelsCommand implements Callable<Integer> {
  private static final double MB = 1e6;

  @Spec private CommandSpec spec;

  @ArgGroup private @Nullable Asked asked;

  @Option(
      names = "--origin",
      paramLabel = "TEXT",
      description =
          "With --from: where they were brought from, kept beside them; the folder if"
              + " left out.")
  private @Nullable String origin;

  /** One thing at a time. */
  static final class Asked {
    @Option(names = "--json", description = "Print it as JSON.")
    private boolean json;

    @Option(
        names = "--from",
        paramLabel = "FOLDER",
        description = "Install them from their npm packages, unpacked in FOLDER.")
    private @Nullable Path from;

    @Option(names = "--remove", description = "Take them away.")
    private boolean remove;

    @Option(
        names = "--wanted",
        description = "Print the packages of what is missing or damaged, each with its MB.")
    private boolean wanted;
  }

  @Override
  public Integer call() throws Exception {
    LandmarkModels models = LandmarkModels.ofThisUser();
    if (origin != null && (asked == null || asked.from == null)) {
      throw new ParameterException(spec.commandLine(), "--origin goes with --from");
    }
    if (asked != null && asked.from != null) {
      return install(models, asked.from);
    }
    if (asked != null && asked.remove) {
      Output.print(spec, "took away %d files of %s", models.remove(), models.folder());
      return PalmturnCommand.DONE;
    }
    List<ModelStatus> standings = models.statuses();
    if (asked != null && asked.wanted) {
      packagesOf(standings)
          .forEach(
              each ->
                  Output.print(
                      spec,
                      "%s@%s %.0f",
                      each.packageName(),
                      each.version(),
                      each.packedBytes() / MB));
      return PalmturnCommand.DONE;
    }
    if (asked != null) {
      spec.commandLine().getOut().print(models.json(standings));
    } else {
      print(models, standings);
    }
    return damaged(models, standings);
  }

  private int install(LandmarkModels models, Path from) throws Exception {
    String whence = origin != null ? origin : from.toAbsolutePath().normalize().toString();
    int installed;
    try (TerminalProgress bar = TerminalProgress.on(spec)) {
      installed = models.install(from, whence, LocalDate.now(Clocks.SYSTEM), bar).size();
    }
    if (installed == 0) {
      Output.print(spec, "all are in %s already", models.folder());
    } else {
      Output.print(spec, "installed %d files in %s", installed, models.folder());
    }
    return PalmturnCommand.DONE;
  }

  private void print(LandmarkModels models, List<ModelStatus> standings) {
    List<List<String>> rows = new ArrayList<>();
    rows.add(List.of("file", "state", "MB", "what it gives"));
    for (ModelStatus each : standings) {
      rows.add(
          List.of(
              each.model().fileName(),
              each.state().word(),
              Decimals.fixed(each.model().bytes() / MB, 1),
              each.model().what()));
    }
    TextTable.lines(rows).forEach(spec.commandLine().getOut()::println);
    spec.commandLine().getOut().println();
    Output.print(spec, "Folder: %s", models.folder());
    Output.print(
        spec,
        "Licence: %s; of the npm packages %s",
        LandmarkModels.LICENCE,
        String.join(
            " and ",
            NpmPackage.ALL.stream()
                .map(each -> each.packageName() + " " + each.version())
                .toList()));
    standings.stream()
        .filter(each -> each.on() != null && each.from() != null)
        .map(each -> "Installed on %s from %s".formatted(each.on(), each.from()))
        .distinct()
        .forEach(spec.commandLine().getOut()::println);
    if (standings.stream().anyMatch(each -> each.state() == FileState.MISSING)) {
      Output.print(
          spec,
          "Shape is not%s installed: everything else works. To install it: %s",
          standings.stream().anyMatch(each -> each.state() != FileState.MISSING) ? " wholly" : "",
          LandmarkModels.TOOL);
    }
  }

  private static List<NpmPackage> packagesOf(List<ModelStatus> standings) {
    return standings.stream()
        .filter(each -> each.state() != FileState.INSTALLED)
        .map(each -> each.model().npmPackage())
        .distinct()
        .toList();
  }

  /** Says which files are damaged, and returns the status that goes with that. */
  private int damaged(LandmarkModels models, List<ModelStatus> standings) {
    List<String> names =
        standings.stream()
            .filter(each -> each.state() == FileState.DAMAGED)
            .map(each -> each.model().fileName())
            .toList();
    if (names.isEmpty()) {
      return PalmturnCommand.DONE;
    }
    spec.commandLine()
        .getErr()
        .printf(
            "palmturn: %s: damaged (wrong SHA-256): %s; run %s, which brings what is damaged anew%n",
            models.folder(), String.join(", ", names), LandmarkModels.TOOL);
    return PalmturnCommand.WRONG_DATA;
  }
}
