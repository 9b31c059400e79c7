package palmturn.trial;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class NamesTest {
  @ParameterizedTest
  @ValueSource(strings = {"right-baseline-1", "left-after-2-3", "left-after-12-999"})
  void aTrialsNameIsReadBack(String name) {
    assertEquals(name, TrialId.parse(name).name());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "right-baseline",
        "right-baseline-0",
        "both-baseline-1",
        "right-after-0-1",
        "../right-baseline-1",
        "right-baseline-1.json",
        "right-baseline-1000"
      })
  void whatIsNoNameIsRefused(String text) {
    assertThrows(IllegalArgumentException.class, () -> TrialId.parse(text));
  }

  @ParameterizedTest
  @ValueSource(strings = {"nothing", "estimate", "reader B", "reader Anna B."})
  void whatAReadingStartedFromIsReadBack(String text) {
    assertEquals(text, StartedFrom.parse(text).code());
  }

  @Test
  void aWordThatIsNoneOfThoseKnownIsRefusedWithThem() {
    IllegalArgumentException refusal =
        assertThrows(IllegalArgumentException.class, () -> Coded.parse(Zone.class, "middle"));
    assertEquals(
        "\"middle\" is not one of centre, fingers, wrist, edge, unknown", refusal.getMessage());
  }

  @Test
  void aReadingKeepsItsMarksInOrderOfTime() {
    Reading reading =
        Reading.begin("A", StartedFrom.NOTHING)
            .plus(Slap.onFrame(Slap.Kind.SLAP, 2, 0.02, Side.BACK, Zone.CENTRE))
            .plus(Slap.onFrame(Slap.Kind.SLAP, 1, 0.02, Side.PALM, Zone.CENTRE));
    assertEquals(1, reading.slaps().get(0).timeS());
  }
}
