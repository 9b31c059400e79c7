package palmturn.lab.golden;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import palmturn.cli.PalmturnCommand;
import palmturn.json.JsonException;
import palmturn.lab.bench.ClipTruth;
import palmturn.trial.UserError;

/**
 * A folder of everything that the program prints and writes for known input, without what differs
 * from run to run: the folder's own name and the time at which a report was made.
 */
public final class GoldenOutput {
  private static final String TRUTH = ".truth.json";
  private static final Pattern MADE_AT =
      Pattern.compile("Made by Palmturn on [^.<\\n]*(?=[.<\\n])");

  /** Arguments for the demo's session, and the file that their output goes to. */
  private static final List<List<String>> DEMO =
      List.of(
          List.of("score.txt", "score", "demo"),
          List.of("score.json", "score", "demo", "--json"),
          List.of("agree.txt", "agree", "demo", "--readers", "A,B"),
          List.of("agree.json", "agree", "demo", "--readers", "A,B", "--json"),
          List.of("settle.txt", "settle", "demo"),
          List.of("settle.json", "settle", "demo", "--json"),
          List.of("progress.txt", "progress", "demo"),
          List.of("progress.json", "progress", "demo", "--json"),
          List.of("ladder.txt", "ladder", "demo"),
          List.of("drills.txt", "drills"),
          List.of("limits.txt", "limits"),
          List.of("verify.txt", "verify", "demo"),
          List.of("report.txt", "report", "demo", "--pdf"));

  private final Path folder;
  private final Path home;
  private final List<String> failed = new ArrayList<>();

  private GoldenOutput(Path folder, Path home) {
    this.folder = folder;
    this.home = home;
  }

  /**
   * Makes an empty folder to write into.
   *
   * @param home the checkout, whose name is left out of the output
   */
  public static GoldenOutput into(Path folder, Path home) throws IOException {
    Files.createDirectories(folder);
    // The settings of whoever runs this must not change what is printed.
    System.setProperty("palmturn.settings", folder.resolve("no-settings").toString());
    return new GoldenOutput(folder, home);
  }

  /** Returns the command lines that did not end well. */
  public List<String> failed() {
    return List.copyOf(failed);
  }

  /**
   * Writes the demo's session without its clips, the output of each command for it, and its report;
   * a PDF as its text.
   */
  public void demo() throws IOException {
    Path demo = folder.resolve("demo");
    write("demo.txt", List.of("demo", "--no-app", "--dir", demo.toString()));
    for (List<String> each : DEMO) {
      List<String> arguments =
          each.subList(1, each.size()).stream()
              .map(word -> word.equals("demo") ? demo.toString() : word)
              .toList();
      write(each.get(0), arguments);
    }
    delete(demo.resolve("clips"));
    delete(demo.resolve(".lock"));
    for (Path file : files(demo)) {
      String name = file.getFileName().toString();
      if (name.endsWith(".pdf")) {
        Files.writeString(file.resolveSibling(name + ".txt"), steady(text(file)));
        Files.delete(file);
      } else if (name.endsWith(".html")) {
        Files.writeString(file, steady(Files.readString(file)));
      }
    }
  }

  /**
   * Writes the estimate of each clip of a folder that has its truth beside it.
   *
   * @throws UserError if a truth can't be read
   */
  public void estimates(Path clips) throws IOException, UserError {
    String group = clips.toAbsolutePath().normalize().getFileName().toString();
    for (Path truth : files(clips)) {
      String name = truth.getFileName().toString();
      if (name.endsWith(TRUTH)) {
        String clip = name.substring(0, name.length() - TRUTH.length());
        write(
            "estimate-%s-%s.json".formatted(group, clip),
            List.of(
                "estimate",
                truth.resolveSibling(clip + ".mp4").toString(),
                "--hand",
                hand(truth),
                "--json"));
      }
    }
  }

  private static String hand(Path truth) throws IOException, UserError {
    try {
      return ClipTruth.read(Files.readString(truth)).hand().code();
    } catch (JsonException e) {
      throw new UserError(truth.getFileName() + ": " + e.getMessage(), e);
    }
  }

  private void write(String file, List<String> arguments) throws IOException {
    StringWriter printed = new StringWriter();
    PrintWriter out = new PrintWriter(printed);
    int status = PalmturnCommand.run(arguments.toArray(String[]::new), out, out, session -> {});
    if (status != PalmturnCommand.DONE) {
      failed.add(String.join(" ", arguments));
    }
    Files.writeString(folder.resolve(file), steady(printed.toString()));
  }

  private String steady(String text) {
    return MADE_AT
        .matcher(text.replace(folder.toString(), "DIR").replace(home.toString(), "HOME"))
        .replaceAll("Made by Palmturn on DATE");
  }

  private static String text(Path pdf) throws IOException {
    try (PDDocument document = Loader.loadPDF(pdf.toFile())) {
      return new PDFTextStripper().getText(document);
    }
  }

  private static List<Path> files(Path folder) throws IOException {
    try (Stream<Path> files = Files.walk(folder)) {
      return files.filter(Files::isRegularFile).sorted().toList();
    }
  }

  private static void delete(Path each) throws IOException {
    if (!Files.exists(each)) {
      return;
    }
    try (Stream<Path> inside = Files.walk(each)) {
      for (Path file : inside.sorted(Comparator.reverseOrder()).toList()) {
        Files.delete(file);
      }
    }
  }
}
