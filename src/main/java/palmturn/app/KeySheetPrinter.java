package palmturn.app;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import palmturn.app.desk.Question;
import palmturn.app.desk.Questions;
import palmturn.app.keys.Action;
import palmturn.app.keys.Chord;
import palmturn.app.keys.KeyBindings;
import palmturn.app.keys.KeyLines;
import palmturn.app.keys.KeyMap;
import palmturn.app.tasks.Tasks;
import palmturn.work.report.KeyPages;

/**
 * Writes all keys onto a page that any browser prints.
 *
 * @param folder the folder for the page
 * @param browser shows it
 */
record KeySheetPrinter(
    KeyBindings keys, Questions questions, Tasks tasks, Path folder, Consumer<Path> browser) {
  /** Writes the page, shows it, and names its file on the sheet of all keys. */
  void run() {
    KeyMap map = keys.map();
    tasks.run(
        () -> KeyPages.write(folder, lines(map), map.changed().size()),
        file -> {
          questions.ask(Question.Page.ALL_KEYS);
          keys.change().showMessage("Written to %s: print it from the browser.".formatted(file));
          browser.accept(file);
        },
        problem -> keys.change().showMessage(String.valueOf(problem.getMessage())));
  }

  /** Returns the lines of the page. */
  static List<KeyPages.Line> lines(KeyMap keys) {
    List<KeyPages.Line> lines = new ArrayList<>();
    KeyLines.columns().stream()
        .flatMap(List::stream)
        .forEach(
            group ->
                KeyLines.of(group)
                    .forEach(
                        line ->
                            lines.add(
                                new KeyPages.Line(
                                    group.words(), caps(line.actions(), keys), line.words()))));
    return lines;
  }

  /** Nine digits in a row leave no room for words. */
  private static List<String> few(List<String> chords) {
    return chords.size() <= 4 ? chords : List.of(chords.get(0), "…", chords.get(chords.size() - 1));
  }

  private static List<String> caps(List<Action> actions, KeyMap keys) {
    return actions.stream()
        .flatMap(each -> few(keys.shown(each)).stream())
        .map(chord -> String.join(" ", Chord.parts(chord)))
        .toList();
  }
}
