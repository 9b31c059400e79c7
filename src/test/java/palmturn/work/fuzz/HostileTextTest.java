package palmturn.work.fuzz;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Random;
import java.util.function.Function;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import palmturn.json.DrillsJson;
import palmturn.json.JournalLine;
import palmturn.json.JsonException;
import palmturn.json.LimitsJson;
import palmturn.json.PackManifest;
import palmturn.json.SessionJson;
import palmturn.json.TrialJson;
import palmturn.lab.fuzz.TextMutation;
import palmturn.report.MarksCsv;
import palmturn.report.MarksFormatException;
import palmturn.trial.Reading;
import palmturn.trial.SampleFiles;

/** Every text that comes from outside, damaged by seed: read, or refused in one line. */
class HostileTextTest {
  private static final int EACH = Integer.getInteger("palmturn.fuzz.texts", 1_000);
  private static final long SEED = 20_260_701;

  private interface Read<T> {
    T of(String text) throws JsonException, MarksFormatException;
  }

  /** A form of text: one good text, how it is read, and how written again where it is. */
  private record Form<T>(
      String name, String good, Read<T> read, @Nullable Function<T, String> write) {
    @Override
    public String toString() {
      return name;
    }

    /** Returns whether it was read. */
    boolean survives(String text, String where) {
      T read;
      try {
        read = this.read.of(text);
      } catch (JsonException | MarksFormatException e) {
        String message = String.valueOf(e.getMessage());
        assertEquals(1, message.lines().count(), where + message);
        assertTrue(message.length() < 600, where + message);
        return false;
      } catch (RuntimeException e) {
        throw new AssertionError(where + e + "\n" + text, e);
      }
      if (write != null) {
        try {
          String once = write.apply(read);
          assertEquals(once, write.apply(this.read.of(once)), where + text);
        } catch (JsonException | MarksFormatException | RuntimeException e) {
          throw new AssertionError(where + "is read but not read again: " + e + "\n" + text, e);
        }
      }
      return true;
    }
  }

  static Stream<Form<?>> forms() {
    Reading reading = SampleFiles.fullTrial().readings().get(0);
    return Stream.of(
        new Form<>(
            "session",
            SessionJson.write(SampleFiles.fullSession()),
            SessionJson::read,
            SessionJson::write),
        new Form<>(
            "trial", TrialJson.write(SampleFiles.fullTrial()), TrialJson::read, TrialJson::write),
        new Form<>(
            "trial with an estimate",
            TrialJson.write(
                SampleFiles.plainTrial(SampleFiles.RIGHT).withEstimate(SampleFiles.fullEstimate())),
            TrialJson::read,
            TrialJson::write),
        new Form<>(
            "journal line",
            new JournalLine(Instant.EPOCH, "Add a slap", reading, null).write().strip(),
            JournalLine::read,
            null),
        new Form<>("limits", resource("/palmturn/limits.json"), LimitsJson::read, null),
        new Form<>("drills", DrillsJson.standardText(), DrillsJson::read, DrillsJson::write),
        new Form<>(
            "pack's list",
            new PackManifest(
                    "H-07",
                    LocalDate.of(2026, 5, 1),
                    Instant.EPOCH,
                    List.of(new PackManifest.Entry("session.json", SampleFiles.SHA, 17)))
                .write(),
            PackManifest::read,
            PackManifest::write),
        new Form<>(
            "marks",
            MarksCsv.write(reading),
            text -> MarksCsv.parse(text, 1 / 60.0),
            marks ->
                MarksCsv.write(
                    new Reading(
                        "AB",
                        true,
                        palmturn.trial.StartedFrom.NOTHING,
                        marks.slaps(),
                        marks.spans(),
                        palmturn.trial.Extra.NONE))));
  }

  private static String resource(String name) {
    try (InputStream in = LimitsJson.class.getResourceAsStream(name)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
  }

  @ParameterizedTest
  @MethodSource("forms")
  void damageIsReadOrRefusedInOneLineNeverWorse(Form<?> form) {
    assertTrue(form.survives(form.good(), "undamaged: "));
    int read = 0;
    for (long seed = SEED; seed < SEED + EACH; seed++) {
      String text = TextMutation.of(form.good(), new Random(seed));
      read += form.survives(text, "%s, seed %d: ".formatted(form.name(), seed)) ? 1 : 0;
    }
    assertTrue(read < EACH, "some damage is refused");
    System.out.printf("%s: %d of %d read%n", form.name(), read, EACH);
  }
}
