package palmturn.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Systems whose own digits, commas or capitals differ; the compiler refuses what rests on them. */
class LocaleTest {
  private static final Path CLIPS = Path.of("sample-clips-synthetic");

  @TempDir static Path folder;
  private static Path session;
  private final Locale before = Locale.getDefault();

  @AfterEach
  void back() {
    Locale.setDefault(before);
  }

  private static Path session() {
    if (session == null) {
      session = folder.resolve("s");
      Run.of("new", session, "--athlete", "H-07");
      for (String name : new String[] {"right-baseline-1", "left-baseline-1"}) {
        Path clip = CLIPS.resolve(name + ".mp4");
        Run.of("add", session, clip, "--hand", name.substring(0, name.indexOf('-')));
        Path marks = CLIPS.resolve(name + ".marks.csv");
        Run.of("marks", "import", session.resolve(name), marks, "--reader", "A");
      }
    }
    return session;
  }

  private static String printed() throws Exception {
    StringBuilder all = new StringBuilder();
    for (String command : new String[] {"score", "score --json", "limits", "drills", "verify"}) {
      String[] words = command.split(" ");
      boolean ofSession = !command.equals("limits") && !command.equals("drills");
      Run run =
          !ofSession
              ? Run.of(words[0])
              : words.length == 1
                  ? Run.of(words[0], session())
                  : Run.of(words[0], session(), words[1]);
      all.append(run.out()).append(run.err());
    }
    all.append(Run.of("inspect", CLIPS.resolve("right-baseline-1.mp4")).out());
    Run.of("report", session());
    return all + Files.readString(session().resolve("report/report.html"));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"ar-EG-u-nu-arab", "fa-IR-u-nu-arabext", "tr-TR", "de-DE", "hi-IN-u-nu-deva"})
  void everySystemPrintsTheSame(String tag) throws Exception {
    Locale.setDefault(Locale.ROOT);
    String wanted = printed();
    Locale.setDefault(Locale.forLanguageTag(tag));
    List<String> now = withoutTime(printed());
    for (int i = 0; i < now.size(); i++) {
      assertEquals(withoutTime(wanted).get(i), now.get(i));
    }
  }

  @Test
  void theListOfHandsIsInTheWordsThatAreTyped() {
    String error = Run.of("add", session(), CLIPS, "--hand", "middle").err();
    assertEquals(-1, error.indexOf("LEFT"), error);
  }

  /** A report says when it was made. */
  private static List<String> withoutTime(String text) {
    return text.lines().filter(line -> !line.contains("Made by Palmturn on")).toList();
  }
}
