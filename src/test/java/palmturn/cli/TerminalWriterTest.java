package palmturn.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.StringWriter;
import java.io.Writer;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import palmturn.store.SessionFolder;
import palmturn.trial.Extra;
import palmturn.trial.Message;
import palmturn.trial.SampleFiles;
import palmturn.trial.Session;
import palmturn.work.session.Sessions;

class TerminalWriterTest {
  /**
   * Clears the screen, sets the window's title, reverses the writing, ends a C string, C1's CSI.
   */
  private static final String HOSTILE =
      "a\u001B[2J\u001B]0;title\u0007\u202Egnp\u0000\u009B1m\r\u2028b";

  @TempDir Path temp;

  @Test
  void ordersAreShownAsQuestionMarks() {
    assertEquals("a?[2J?]0;title??gnp??1m??b", TerminalWriter.harmless(HOSTILE));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"früh – “ok” ≥ 80 %", "two\nlines\tand a tab\r\n", "نیم\u200Cفاصله", "👩\u200D🎓"})
  void wordsOfEveryScriptAreLeftAlone(String words) {
    assertEquals(words, TerminalWriter.harmless(words));
  }

  /** What comes from a stranger's session reaches the terminal, or a script, without orders. */
  @ParameterizedTest
  @ValueSource(
      strings = {"score", "score --json", "progress", "settle", "verify", "ladder", "agree"})
  void noCommandPrintsAReceivedOrder(String command) throws Exception {
    Path session = temp.resolve("s");
    try (SessionFolder made =
        Sessions.create(session, "H" + HOSTILE, LocalDate.of(2026, 11, 14), Session.Facts.NONE)) {
      made.save(SampleFiles.fullTrial());
      made.keep(
          SampleFiles.RIGHT, SampleFiles.fullTrial().readings().get(0).by("X" + HOSTILE), "x");
      made.change(
          now ->
              now.withMessages(
                  List.of(new Message("coach", Instant.EPOCH, null, null, HOSTILE, Extra.NONE))));
    }
    String[] words = command.split(" ");
    Run run = words.length == 1 ? Run.of(words[0], session) : Run.of(words[0], session, words[1]);
    String printed = run.out() + run.err();
    assertFalse(printed.isBlank());
    assertTrue(
        printed
            .chars()
            .allMatch(c -> c == '\n' || c == '\t' || Character.getType(c) != Character.CONTROL),
        printed);
    assertFalse(printed.contains("\u202E"), printed);
  }

  @ParameterizedTest
  @ValueSource(strings = {"No space left on device", "Bad file descriptor", "Broken pipe"})
  void outputThatIsLostEndsInOne(String why) {
    StringWriter err = new StringWriter();
    int status = PalmturnCommand.run(new String[] {"limits"}, new Lost(why), err, session -> {});
    assertEquals(1, status);
    assertEquals(!why.equals("Broken pipe"), err.toString().contains(why), err::toString);
    assertTrue(err.toString().lines().count() <= 1, err::toString);
  }

  /** A full or closed output. */
  private static final class Lost extends Writer {
    private final String why;

    Lost(String why) {
      this.why = why;
    }

    @Override
    public void write(char[] text, int from, int length) throws IOException {
      throw new IOException(why);
    }

    @Override
    public void flush() {}

    @Override
    public void close() {}
  }
}
