package palmturn.lab.draw;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import palmturn.trial.Slap;

class GridTest {
  private static final List<Named> CLIPS = Grid.clips();

  private static List<Parameters> shown(boolean slaps) {
    return CLIPS.stream()
        .map(Named::parameters)
        .filter(p -> slaps == (p.shown() == Shown.SLAPS))
        .toList();
  }

  @Test
  void noTwoClipsHaveOneName() {
    assertEquals(CLIPS.size(), CLIPS.stream().map(Named::name).distinct().count());
  }

  @Test
  void everyLevelOfEveryFactorIsThereThreeTimes() {
    Map<String, Function<Parameters, Object>> factors =
        Map.of(
            "hand", Parameters::hand,
            "rate", p -> p.tempo().rateSlapsPerS(),
            "CV", p -> p.tempo().intervalCvPct(),
            "frames/s", p -> p.filming().framesPerS(),
            "upright", p -> p.filming().upright(),
            "shake", p -> p.filming().shakePx(),
            "dropped", p -> p.filming().dropShare(),
            "sound", Parameters::sound,
            "doubles", p -> p.faults().size(),
            "elbow", p -> p.stretches().size());
    Map<String, Integer> levels =
        Map.of(
            "hand",
            2,
            "rate",
            7,
            "CV",
            4,
            "frames/s",
            3,
            "upright",
            2,
            "shake",
            3,
            "dropped",
            2,
            "sound",
            4,
            "doubles",
            3,
            "elbow",
            2);
    factors.forEach(
        (name, factor) -> {
          Map<Object, Long> counts =
              shown(true).stream().collect(Collectors.groupingBy(factor, Collectors.counting()));
          assertEquals(levels.get(name), counts.size(), name);
          counts.forEach((level, n) -> assertTrue(n >= 3, name + " " + level + ": " + n));
        });
    Map<Shown, Long> others =
        shown(false).stream()
            .collect(Collectors.groupingBy(Parameters::shown, Collectors.counting()));
    assertEquals(Map.of(Shown.STILL, 3L, Shown.TURNING, 3L, Shown.NOBODY, 3L), others);
  }

  @Test
  void atLeastSixtyDoublesArePlanted() {
    long planted =
        shown(true).stream()
            .flatMap(p -> Schedule.of(p).stream())
            .filter(c -> c.kind() == Slap.Kind.DOUBLE)
            .count();
    assertTrue(planted >= 60, "doubles: " + planted);
  }

  @Test
  void aSecondContactComesBeforeTheNextSlap() {
    for (Parameters p : shown(true)) {
      List<Contact> contacts = Schedule.of(p);
      for (int i = 1; i < contacts.size(); i++) {
        double gap = contacts.get(i).timeS() - contacts.get(i - 1).timeS();
        assertTrue(gap > 0.03, "gap of %s s at %s".formatted(gap, contacts.get(i)));
      }
    }
  }
}
