package palmturn.wording;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;
import palmturn.measure.Measures;
import palmturn.measure.Phrases;
import palmturn.measure.Quality;
import palmturn.trial.DrillHand;
import palmturn.trial.Hand;
import palmturn.trial.TrialId;

class NamesTest {
  @Test
  void trialIsNamedByHandBlockAndRepeat() {
    assertEquals("left hand, after 1, repeat 2", Names.trial(TrialId.parse("left-after-1-2")));
    assertEquals("right hand", Names.hand(Hand.RIGHT));
    assertEquals("after 2", Names.block("after-2"));
  }

  @Test
  void drillNamesTheHandThatItTrains() {
    assertEquals(", left hand", Names.afterDrill(DrillHand.LEFT));
    assertEquals(", both hands", Names.afterDrill(DrillHand.BOTH));
    assertEquals("", Names.afterDrill(DrillHand.NONE));
  }

  @Test
  void headlineIsNamedWithItsUnit() {
    assertEquals("slaps/s", Names.headline(Quality.SPEED));
    assertEquals("clean share, %", Names.headline(Quality.ACCURACY));
    assertEquals("rhythm, steady CV, %", Names.qualityWithUnit(Quality.RHYTHM));
    assertEquals("nPVI", Names.measure(Measures.NPVI));
  }

  @Test
  void listEndsWithAnd() {
    assertEquals("", Phrases.list(List.of()));
    assertEquals("a", Phrases.list(List.of("a")));
    assertEquals("a, b and c", Phrases.list(List.of("a", "b", "c")));
    assertEquals("Left hand", Phrases.capital("left hand"));
    assertEquals("", Phrases.capital(""));
  }

  @Test
  void dateIsThatOfUtc() {
    assertEquals("3 May 2026", Names.date(Instant.parse("2026-05-03T23:59:59Z")));
  }
}
