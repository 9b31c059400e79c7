package palmturn.lab;

import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import palmturn.cli.Home;
import palmturn.cli.Output;
import palmturn.cli.PalmturnCommand;
import palmturn.cli.TerminalProgress;
import palmturn.cli.TextTable;
import palmturn.estimate.hands.NetworkUse;
import palmturn.lab.bench.Bench;
import palmturn.lab.bench.BenchFigure;
import palmturn.lab.bench.BenchResult;
import palmturn.lab.bench.ShapeResult;
import palmturn.lab.bench.SimulatedAthletes;
import palmturn.lab.bench.StepFigures;
import palmturn.lab.bench.StepTimes;
import palmturn.trial.UserError;
import palmturn.work.Demo;
import palmturn.work.estimate.Estimating;
import palmturn.work.models.LandmarkModels;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

@Command(
    name = "bench",
    description = {
      "Measures the estimate on clips whose truth lies beside them as NAME.truth.json.",
      "The truth of one slap's side is given to each, and the elbow's place and scale to the run"
          + " by sound and motion. Times are ratios taken in the same run."
    })
public final class BenchCommand implements Callable<Integer> {
  /** An arbitrary seed: the same athletes at every run. */
  private static final long SEED = 20260714;

  @Spec private CommandSpec spec;

  @Option(
      names = "--clips",
      arity = "1..*",
      paramLabel = "DIR",
      description = "Folders of clips; the bundled ones if left out.")
  private @Nullable List<Path> clips;

  @Option(
      names = "--steps",
      paramLabel = "CLIP",
      description = {
        "Time steps and jumps through this clip, and nothing else unless --clips is given.",
        "The goals are for 1080p, 60 frames a second, a key frame every 250."
      })
  private @Nullable Path steps;

  @Option(
      names = "--athletes",
      paramLabel = "N",
      description = {
        "Draw N athletes whose truth is known, and count how often the intervals hold it and what "
            + "the verdicts say; nothing else unless --clips is given."
      })
  private @Nullable Integer athletes;

  @Option(
      names = "--shape",
      description = {
        "Measure sides, zones, bent wrists and confidences estimated by the shape of the hands, with "
            + "no side given; beside them the same without shape. Nothing else is measured."
      })
  private boolean shape;

  @Option(
      names = "--lite",
      description = "With --shape: use the lite networks, which the estimate does not use.")
  private boolean lite;

  @Option(
      names = "--around-contacts",
      description = "With --shape: look only at the frames around contacts, not at every one.")
  private boolean aroundContacts;

  @Option(names = "--json", description = "Print the figures as JSON, with every clip's own.")
  private boolean json;

  @Option(names = "--markdown", description = "Print the figures as tables for a document.")
  private boolean markdown;

  @Option(
      names = "--docs",
      paramLabel = "DIR",
      description = {
        "Write the tables into the pages of this folder, docs/measured, between their marks, with "
            + "command, commit and date: estimate.md, with --shape shape.md. The bundled clips are always "
            + "measured then, --clips adds to them."
      })
  private @Nullable Path docs;

  @Override
  public Integer call() throws Exception {
    if (!shape && (lite || aroundContacts)) {
      throw new ParameterException(
          spec.commandLine(), "--lite and --around-contacts go with --shape");
    }
    if (docs != null) {
      if (json || markdown || steps != null || athletes != null) {
        throw new ParameterException(
            spec.commandLine(), "--docs goes with --clips, --shape and its options alone");
      }
      return writeDocs(docs);
    }
    return shape ? printShape() : printFigures();
  }

  private int writeDocs(Path folder) throws UserError, InterruptedException {
    MeasuredPage page = MeasuredPage.read(folder.resolve(shape ? "shape.md" : "estimate.md"));
    List<Path> folders = new ArrayList<>(List.of(Demo.bundledClips(Home.folder())));
    if (clips != null) {
      folders.addAll(clips);
    }
    String load = MeasuredRun.load();
    List<String> failed = new ArrayList<>();
    StringBuilder tables = new StringBuilder();
    try (TerminalProgress bar = TerminalProgress.on(spec)) {
      if (shape) {
        for (Path each : folders) {
          ShapeResult result = measureShape(List.of(each), bar);
          failed.addAll(result.failed());
          tables.append(
              "\n### Clips of `%s`\n\n%s"
                  .formatted(each.toAbsolutePath().normalize().getFileName(), result.markdown()));
        }
      } else {
        BenchResult result = new Bench(Estimating.standard()).run(folders, bar);
        failed.addAll(result.failed());
        tables.append("\n").append(result.markdown());
      }
    }
    String command = "tools/lab bench %s--docs docs/measured --clips …".formatted(options());
    page.write(
        MeasuredRun.line(Home.folder(), command, folders, load, Clock.systemUTC()) + "\n" + tables);
    return exitStatus(failed);
  }

  private String options() {
    return (shape ? "--shape " : "")
        + (lite ? "--lite " : "")
        + (aroundContacts ? "--around-contacts " : "");
  }

  private ShapeResult measureShape(List<Path> folders, TerminalProgress bar) throws UserError {
    Path networks = LandmarkModels.ofThisUser().installed();
    Estimating estimating =
        networks == null
            ? Estimating.standard()
            : Estimating.using(new NetworkUse(networks, lite, !aroundContacts));
    return new Bench(estimating).measureShapes(folders, networks != null, bar);
  }

  private int printShape() throws UserError {
    ShapeResult result;
    try (TerminalProgress bar = TerminalProgress.on(spec)) {
      result = measureShape(folders(), bar);
    }
    if (json) {
      spec.commandLine().getOut().print(result.json());
    } else if (markdown) {
      spec.commandLine().getOut().print(result.markdown());
    } else {
      if (!result.networksInstalled()) {
        Output.print(spec, "%s", ShapeResult.NOT_INSTALLED);
      }
      TextTable.lines(table(result.figures())).forEach(line -> Output.print(spec, "%s", line));
    }
    return exitStatus(result.failed());
  }

  private int printFigures() throws UserError {
    BenchResult result;
    try (TerminalProgress bar = TerminalProgress.on(spec)) {
      result = measure(bar);
    }
    if (json) {
      spec.commandLine().getOut().print(result.json());
    } else if (markdown) {
      spec.commandLine().getOut().print(result.markdown());
    } else {
      TextTable.lines(table(result.figures())).forEach(line -> Output.print(spec, "%s", line));
    }
    return exitStatus(result.failed());
  }

  private int exitStatus(List<String> failed) {
    failed.forEach(each -> spec.commandLine().getErr().println("palmturn: " + each));
    return failed.isEmpty() ? PalmturnCommand.DONE : PalmturnCommand.WRONG_DATA;
  }

  private BenchResult measure(TerminalProgress bar) throws UserError {
    if (steps == null && athletes == null) {
      return estimates(bar);
    }
    BenchResult result =
        clips == null ? new BenchResult(List.of(), List.of(), List.of()) : estimates(bar);
    if (steps != null) {
      StepTimes times = StepTimes.of(steps, bar);
      result = result.withFigures(StepFigures.of(times, String.valueOf(steps.getFileName())));
    }
    if (athletes != null) {
      result = result.withFigures(SimulatedAthletes.run(athletes, new Random(SEED), bar));
    }
    return result;
  }

  private BenchResult estimates(TerminalProgress bar) throws UserError {
    return new Bench(Estimating.standard()).run(folders(), bar);
  }

  private List<Path> folders() throws UserError {
    return clips == null ? List.of(Demo.bundledClips(Home.folder())) : clips;
  }

  private static List<List<String>> table(List<BenchFigure> figures) {
    List<List<String>> rows = new ArrayList<>();
    rows.add(List.of("what", "n", "measured", "unit", "to reach", "reached", "worst clip", "its"));
    for (BenchFigure row : figures) {
      Boolean reached = row.reached();
      rows.add(
          List.of(
              row.description(),
              String.valueOf(row.n()),
              row.format(row.value()),
              row.unit(),
              row.goal() == null
                  ? ""
                  : (row.higherIsBetter() ? "≥ " : "≤ ") + row.format(row.goal()),
              reached == null ? "" : reached ? "yes" : "no",
              row.worstClip() == null ? "" : row.worstClip(),
              row.format(row.worstValue())));
    }
    return rows;
  }
}
