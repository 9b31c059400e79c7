package palmturn.lab.draw;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import palmturn.trial.Slap;

class GridSetTest {
  private static final List<NamedClip> CLIPS = GridSet.clips();

  private static List<ClipParameters> shown(boolean slaps) {
    return CLIPS.stream()
        .map(NamedClip::parameters)
        .filter(p -> slaps == (p.content() == ClipContent.SLAPS))
        .toList();
  }

  @Test
  void noTwoClipsHaveOneName() {
    assertEquals(CLIPS.size(), CLIPS.stream().map(NamedClip::name).distinct().count());
  }

  @Test
  void everyLevelOfEveryFactorIsThereThreeTimes() {
    Map<String, Function<ClipParameters, Object>> factors =
        Map.of(
            "hand", ClipParameters::hand,
            "rate", p -> p.tempo().rateSlapsPerS(),
            "CV", p -> p.tempo().intervalCvPct(),
            "frames/s", p -> p.filming().framesPerS(),
            "upright", p -> p.filming().isUpright(),
            "shake", p -> p.filming().shakePx(),
            "dropped", p -> p.filming().dropShare(),
            "sound", ClipParameters::sound,
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
    Map<ClipContent, Long> others =
        shown(false).stream()
            .collect(Collectors.groupingBy(ClipParameters::content, Collectors.counting()));
    assertEquals(
        Map.of(ClipContent.STILL, 3L, ClipContent.TURNING, 3L, ClipContent.NOBODY, 3L), others);
  }

  @Test
  void atLeastSixtyDoublesArePlanted() {
    long planted =
        shown(true).stream()
            .flatMap(p -> ContactSchedule.of(p).stream())
            .filter(c -> c.kind() == Slap.Kind.DOUBLE)
            .count();
    assertTrue(planted >= 60, "doubles: " + planted);
  }

  @Test
  void aSecondContactComesBeforeTheNextSlap() {
    for (ClipParameters p : shown(true)) {
      List<Contact> contacts = ContactSchedule.of(p);
      for (int i = 1; i < contacts.size(); i++) {
        double gap = contacts.get(i).timeS() - contacts.get(i - 1).timeS();
        assertTrue(gap > 0.03, "gap of %s s at %s".formatted(gap, contacts.get(i)));
      }
    }
  }
}
