package palmturn.work.report;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import palmturn.report.KeysPage;
import palmturn.trial.UserError;

/** Writes the page of all keys, for printing. */
public final class KeyPages {
  private KeyPages() {}

  /**
   * A line of the page.
   *
   * @param heading under which it stands; lines of one heading follow each other
   * @param keys as they stand on the keyboard
   * @param words what they do
   */
  public record Line(String heading, List<String> keys, String words) {
    public Line {
      keys = List.copyOf(keys);
    }
  }

  /**
   * Writes {@code keys.html}.
   *
   * @param changed how many keys are not as they came
   * @return where the page lies
   */
  public static Path write(Path folder, List<Line> lines, int changed) throws UserError {
    Map<String, List<KeysPage.Line>> groups = new LinkedHashMap<>();
    for (Line line : lines) {
      groups
          .computeIfAbsent(line.heading(), none -> new ArrayList<>())
          .add(new KeysPage.Line(line.keys(), line.words()));
    }
    KeysPage page =
        new KeysPage(
            groups.entrySet().stream()
                .map(each -> new KeysPage.Group(each.getKey(), each.getValue()))
                .toList(),
            changed);
    Path file = folder.resolve("keys.html");
    try {
      Files.createDirectories(folder);
      Files.writeString(file, page.html());
    } catch (IOException e) {
      throw new UserError(
          "%s can't be written (%s): is the folder read-only, or the disk full?"
              .formatted(file, e.getMessage()),
          e);
    }
    return file;
  }
}
