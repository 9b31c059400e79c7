package palmturn.settle;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static palmturn.settle.Samples.at;
import static palmturn.settle.Samples.changed;
import static palmturn.settle.Samples.even;
import static palmturn.settle.Samples.palm;
import static palmturn.settle.Samples.reading;
import static palmturn.settle.Samples.span;
import static palmturn.settle.Samples.trial;
import static palmturn.settle.Samples.without;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import palmturn.settle.Difference.What;
import palmturn.trial.Decision;
import palmturn.trial.Decision.Choice;
import palmturn.trial.Extra;
import palmturn.trial.Reading;
import palmturn.trial.Settlement;
import palmturn.trial.Side;
import palmturn.trial.Slap;
import palmturn.trial.Span;
import palmturn.trial.StartedFrom;
import palmturn.trial.Trial;
import palmturn.trial.Zone;

class SettledTrialTest {
  private static final Instant NOON = Instant.parse("2026-03-01T12:00:00Z");

  /** Plants mistakes of both readers in slaps of their own, five slaps apart. */
  private static final class Planted {
    final List<Slap> truth = new ArrayList<>();
    final List<Slap> a = new ArrayList<>();
    final List<Slap> b = new ArrayList<>();
    final TreeSet<String> expected = new TreeSet<>();

    Planted(long seed) {
      Random random = new Random(seed);
      double timeS = 1;
      for (int i = 0; i < 60; i++) {
        timeS += 0.18 + 0.04 * random.nextDouble();
        Side side = i % 2 == 0 ? Side.PALM : Side.BACK;
        Zone zone = random.nextInt(5) == 0 ? Zone.FINGERS : Zone.CENTRE;
        Slap slap = Samples.slap(timeS, side, zone);
        List<Slap> right = new ArrayList<>(List.of(slap));
        List<Slap> wrong = new ArrayList<>(right);
        String what = "";
        if (i % 5 == 2) {
          switch (random.nextInt(5)) {
            case 0 -> {
              wrong.clear();
              what = "missed";
            }
            case 1 -> {
              wrong.set(0, at(slap, timeS + (random.nextBoolean() ? 0.05 : -0.05)));
              what = "[APART]";
            }
            case 2 -> {
              wrong.set(0, slap.withSide(side == Side.PALM ? Side.BACK : Side.PALM));
              what = "[SIDE]";
            }
            case 3 -> {
              wrong.set(0, slap.withZone(Zone.EDGE));
              what = "[ZONE]";
            }
            default -> {
              right.add(at(slap, timeS + 0.08).withKind(Slap.Kind.DOUBLE));
              what = "missed";
            }
          }
        }
        boolean mistakenA = random.nextBoolean();
        truth.addAll(right);
        a.addAll(mistakenA ? wrong : right);
        b.addAll(mistakenA ? right : wrong);
        if (what.equals("missed")) {
          what = mistakenA ? "[ONLY_B]" : "[ONLY_A]";
        }
        if (!what.isEmpty()) {
          expected.add(i + what);
        }
      }
    }
  }

  @ParameterizedTest
  @ValueSource(longs = {81, 82, 83, 84, 85, 86, 87, 88})
  void everyPlantedDifferenceIsListedNoOtherAndSettlingThemGivesTheTruth(long seed)
      throws SettleException {
    Planted planted = new Planted(seed);
    Trial trial = trial(reading("JM", planted.a), reading("TK", planted.b));
    Settlement settlement = Settlement.begin("JM", "TK");
    SettledTrial before = SettledTrial.of(trial, settlement);
    assertEquals(
        planted.expected.stream().map(each -> each.replaceAll("^[0-9]+", "")).sorted().toList(),
        before.slaps().stream()
            .map(ruling -> ruling.difference().what().toString())
            .sorted()
            .toList());
    assertEquals(planted.expected.size(), before.open());
    assertFalse(before.reading().finished());
    for (DifferenceState<Slap> ruling : before.slaps()) {
      Difference<Slap> difference = ruling.difference();
      boolean firstIsRight =
          difference.a() == null
              ? !planted.truth.contains(difference.b())
              : planted.truth.contains(difference.a());
      settlement = settlement.plusSlap(on(difference, firstIsRight ? Choice.FIRST : Choice.SECOND));
    }
    SettledTrial after = SettledTrial.of(trial, settlement);
    assertEquals(0, after.open());
    assertEquals(planted.expected.size(), after.decided());
    assertTrue(after.reading().finished());
    assertEquals(reading("", planted.truth).slaps(), after.reading().slaps());
  }

  @ParameterizedTest
  @MethodSource("palmturn.settle.Samples#seeds")
  void takingOneReadersWordThroughoutGivesThatReadersMarks(long seed) throws SettleException {
    Random random = new Random(seed);
    Reading a = reading("JM", Samples.anything(random));
    Reading b = reading("TK", Samples.anything(random));
    Trial trial = trial(a, b);
    Settlement begun = Settlement.begin("JM", "TK");
    SettledTrial before = SettledTrial.of(trial, begun);
    assertEquals(a.slaps(), before.reading().slaps());
    assertEquals(
        a.slaps(), SettledTrial.of(trial, all(before, begun, Choice.FIRST)).reading().slaps());
    SettledTrial second = SettledTrial.of(trial, all(before, begun, Choice.SECOND));
    assertEquals(0, second.open());
    // Where both agree the first's time stands, within the tolerance of the second's.
    assertEquals(labels(b.slaps()), labels(second.reading().slaps()));
  }

  private static Settlement all(SettledTrial before, Settlement begun, Choice choice) {
    Settlement settlement = begun;
    for (DifferenceState<Slap> ruling : before.slaps()) {
      settlement = settlement.plusSlap(on(ruling.difference(), choice));
    }
    return settlement;
  }

  private static List<String> labels(List<Slap> slaps) {
    return slaps.stream()
        .map(slap -> slap.kind() + " " + slap.side() + " " + slap.zone())
        .sorted()
        .toList();
  }

  @Test
  void aMarkMadeAnewStandsForBoth() throws SettleException {
    Trial trial =
        trial(
            reading("JM", even(10)),
            reading("TK", changed(even(10), 4, slap -> at(slap, slap.timeS() + 0.07))));
    Settlement settlement = Settlement.begin("JM", "TK");
    Difference<Slap> difference = SettledTrial.of(trial, settlement).slaps().get(0).difference();
    Slap anew = palm(1.83);
    SettledTrial settled =
        SettledTrial.of(trial, settlement.plusSlap(on(difference, Choice.NEITHER, anew)));
    assertEquals(changed(even(10), 4, slap -> anew), settled.reading().slaps());
    SettledTrial dropped =
        SettledTrial.of(trial, settlement.plusSlap(on(difference, Choice.NEITHER, null)));
    assertEquals(without(even(10), 4), dropped.reading().slaps());
  }

  @Test
  void theLastDecisionHoldsAndMayOpenItAgain() throws SettleException {
    Trial trial = trial(reading("JM", even(10)), reading("TK", without(even(10), 4)));
    Settlement settlement = Settlement.begin("JM", "TK");
    Difference<Slap> difference = SettledTrial.of(trial, settlement).slaps().get(0).difference();
    assertEquals(Set.of(What.ONLY_A), difference.what());
    settlement = settlement.plusSlap(on(difference, Choice.SECOND));
    assertEquals(9, SettledTrial.of(trial, settlement).reading().slaps().size());
    settlement = settlement.plusSlap(on(difference, Choice.OPEN));
    SettledTrial open = SettledTrial.of(trial, settlement);
    assertEquals(1, open.open());
    assertEquals(10, open.reading().slaps().size());
    assertEquals(0, open.stale());
  }

  @Test
  void aDecisionFallsWhenAReadingChangesWhatItSaid() throws SettleException {
    Reading second = reading("TK", changed(even(10), 4, slap -> slap.withSide(Side.BACK)));
    Trial trial = trial(reading("JM", even(10)), second);
    Settlement settlement = Settlement.begin("JM", "TK");
    Difference<Slap> difference = SettledTrial.of(trial, settlement).slaps().get(0).difference();
    settlement = settlement.plusSlap(on(difference, Choice.SECOND));
    Trial noted =
        trial.withReading(
            second.withSlaps(changed(second.slaps(), 4, slap -> slap.withNote("look again"))));
    assertEquals(0, SettledTrial.of(noted, settlement).open());
    Trial changed =
        trial.withReading(
            second.withSlaps(changed(second.slaps(), 4, slap -> slap.withZone(Zone.WRIST))));
    SettledTrial settled = SettledTrial.of(changed, settlement);
    assertEquals(1, settled.open());
    assertEquals(1, settled.stale());
  }

  @Test
  void stretchesAreSettledToo() throws SettleException {
    Span both = span(Span.SpanKind.ELBOW_OUT, 1, 2);
    Span near = span(Span.SpanKind.ELBOW_OUT, 1.1, 2);
    Span only = span(Span.SpanKind.BENT_WRIST, 2, 3);
    Trial trial = trial(reading("JM", even(10), both), reading("TK", even(10), near, only));
    Settlement settlement = Settlement.begin("JM", "TK");
    SettledTrial before = SettledTrial.of(trial, settlement);
    assertEquals(List.of(both), before.reading().spans());
    Difference<Span> difference = before.spans().get(0).difference();
    Decision<Span> decision =
        new Decision<>(
            Choice.SECOND, "AR", NOON, "", difference.a(), difference.b(), null, Extra.NONE);
    SettledTrial after = SettledTrial.of(trial, settlement.plusSpan(decision));
    assertEquals(List.of(both, only), after.reading().spans());
    assertEquals(0, after.open());
  }

  @Test
  void whereBothAgreeTheFirstStandsWithLabelsThatOnlyTheOtherTells() throws SettleException {
    Trial trial =
        trial(reading("JM", even(3)))
            .withEstimate(Samples.estimate("0".repeat(64), 1.01, 1.2, 1.39));
    SettledTrial first = SettledTrial.of(trial, Settlement.begin("JM", Settlement.ESTIMATE));
    assertEquals(even(3), first.reading().slaps());
    assertEquals("reader JM", first.reading().startedFrom().code());
    SettledTrial second = SettledTrial.of(trial, Settlement.begin(Settlement.ESTIMATE, "JM"));
    assertEquals(
        List.of(Side.PALM, Side.BACK, Side.PALM),
        second.reading().slaps().stream().map(Slap::side).toList());
    assertEquals(1.01, second.reading().slaps().get(0).timeS());
    assertEquals(StartedFrom.ESTIMATE, second.reading().startedFrom());
  }

  @Test
  void theSecondsMarksAreMovedOntoTheFirstsClock() throws SettleException {
    List<Slap> late =
        without(even(10), 0).stream().map(slap -> at(slap, slap.timeS() + 0.06)).toList();
    Trial trial = trial(reading("JM", without(even(10), 9)), reading("TK", late));
    Settlement settlement = Settlement.begin("JM", "TK").withTerms(null, true);
    SettledTrial before = SettledTrial.of(trial, settlement);
    assertEquals(2, before.open());
    for (DifferenceState<Slap> ruling : before.slaps()) {
      Choice choice = ruling.difference().a() == null ? Choice.SECOND : Choice.FIRST;
      settlement = settlement.plusSlap(on(ruling.difference(), choice));
    }
    List<Slap> settled = SettledTrial.of(trial, settlement).reading().slaps();
    assertEquals(10, settled.size());
    assertEquals(2.8, settled.get(9).timeS(), 1e-9);
  }

  private static Decision<Slap> on(Difference<Slap> difference, Choice choice) {
    return on(difference, choice, null);
  }

  private static Decision<Slap> on(
      Difference<Slap> difference, Choice choice, @Nullable Slap anew) {
    return new Decision<>(
        choice, "AR", NOON, "seen in the loop", difference.a(), difference.b(), anew, Extra.NONE);
  }
}
