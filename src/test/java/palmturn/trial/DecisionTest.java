package palmturn.trial;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

class DecisionTest {
  private static final Slap SLAP =
      Slap.onFrame(Slap.Kind.SLAP, 1, 1.0 / 60, Side.PALM, Zone.CENTRE);

  @Test
  void aDecisionNeedsSomethingThatWasSaid() {
    assertThrows(IllegalArgumentException.class, () -> decision(Decision.Choice.FIRST, null, null));
  }

  @Test
  void aMarkMadeAnewStandsInsteadOfBothOnly() {
    assertEquals(SLAP, decision(Decision.Choice.NEITHER, SLAP, SLAP).anew());
    assertThrows(
        IllegalArgumentException.class, () -> decision(Decision.Choice.SECOND, SLAP, SLAP));
  }

  @Test
  void aSettlementKeepsDecisionsInTheirOrderAndLeavesTheOldOneAlone() {
    Settlement begun = Settlement.begin("JM", "TK");
    Decision<Slap> first = decision(Decision.Choice.FIRST, SLAP, null);
    Decision<Slap> second = decision(Decision.Choice.OPEN, SLAP, null);
    assertEquals(List.of(first, second), begun.plusSlap(first).plusSlap(second).slaps());
    assertEquals(List.of(), begun.slaps());
  }

  private static Decision<Slap> decision(
      Decision.Choice choice, @Nullable Slap a, @Nullable Slap anew) {
    Instant at = Instant.parse("2026-03-01T12:00:00Z");
    return new Decision<>(choice, "AR", at, "", a, null, anew, Extra.NONE);
  }
}
