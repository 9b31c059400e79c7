package palmturn.lab;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import palmturn.cli.Home;
import palmturn.cli.PalmturnCommand;
import palmturn.lab.fuzz.ClipFuzz;
import palmturn.lab.fuzz.PackFuzz;
import palmturn.trial.UserError;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

@Command(
    name = "fuzz",
    description = {
      "Damages clips of every kind by seed and reads each in a process of its own, as the program "
          + "does. Prints a table and what went wrong; damaged clips stay in target/fuzz-clips then."
    })
final class FuzzCommand implements Callable<Integer> {
  /** Folders of the tests' clips. */
  private static final List<String> BUNDLED = List.of("clip", "work/fuzz", "estimate", "app");

  /** Larger clips take long to read and show nothing that small ones don't. */
  private static final long LARGEST_BYTES = 700_000;

  @Spec private CommandSpec spec;

  @Parameters(
      index = "0",
      paramLabel = "HOW-MANY",
      defaultValue = "2000",
      description = "Damaged clips to read: ${DEFAULT-VALUE} if left out.")
  private int howMany;

  @Parameters(
      index = "1",
      paramLabel = "FIRST-SEED",
      defaultValue = "1",
      description = "Same seed, same damage: ${DEFAULT-VALUE} if left out.")
  private long firstSeed;

  @Parameters(
      index = "2..*",
      paramLabel = "FOLDER",
      description = "Folders of more clips beside those of the tests; over 700 kB are left out.")
  private List<Path> folders = List.of();

  @Option(
      names = "--estimate-every",
      paramLabel = "N",
      defaultValue = "10",
      description = "Also estimate each N-th; 0 for none. ${DEFAULT-VALUE} if left out.")
  private int estimateEvery;

  @Option(
      names = "--packs",
      description =
          "Unpack HOW-MANY sessions' packs of any size, order and date instead of reading clips.")
  private boolean packs;

  @Override
  public Integer call() throws Exception {
    Path home = Home.folder();
    if (packs) {
      return packs(home.resolve("target/fuzz-packs"));
    }
    Path work = home.resolve("target/fuzz-clips");
    Path good = work.resolve("good");
    clear(work);
    Files.createDirectories(good);
    for (String bundled : BUNDLED) {
      copyClips(home.resolve("src/test/resources/palmturn").resolve(bundled), good);
    }
    for (Path folder : folders) {
      copyClips(folder, good);
    }
    ClipFuzz fuzz = new ClipFuzz(good.toString(), work, estimateEvery);
    fuzz.run(firstSeed, howMany);
    spec.commandLine().getOut().print(fuzz.report());
    return fuzz.faults().isEmpty() ? PalmturnCommand.DONE : PalmturnCommand.WRONG_DATA;
  }

  private int packs(Path work) throws IOException, UserError {
    clear(work);
    Files.createDirectories(work);
    PackFuzz fuzz = new PackFuzz(work);
    fuzz.run(firstSeed, howMany);
    fuzz.faults().forEach(spec.commandLine().getOut()::println);
    spec.commandLine().getOut().println(fuzz.report());
    return fuzz.faults().isEmpty() ? PalmturnCommand.DONE : PalmturnCommand.WRONG_DATA;
  }

  private static void copyClips(Path from, Path to) throws IOException, UserError {
    if (!Files.isDirectory(from)) {
      throw new UserError(from + " is no folder");
    }
    for (Path clip : ClipFuzz.goodClips(from.toString())) {
      Path copy = to.resolve(clip.getFileName());
      if (Files.size(clip) < LARGEST_BYTES && !Files.exists(copy)) {
        Files.copy(clip, copy);
      }
    }
  }

  private static void clear(Path folder) throws IOException {
    if (!Files.exists(folder)) {
      return;
    }
    List<Path> inside = new ArrayList<>();
    try (Stream<Path> files = Files.walk(folder)) {
      inside.addAll(files.sorted(Comparator.reverseOrder()).collect(Collectors.toList()));
    }
    for (Path each : inside) {
      Files.delete(each);
    }
  }
}
