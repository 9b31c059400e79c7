package palmturn.estimate.sound;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import palmturn.trial.Curve;

/** The sound laid beside the motion. */
class SoundMatchTest {
  private static double[] contacts(Random random) {
    double[] contacts = new double[25];
    contacts[0] = 1;
    for (int j = 1; j < contacts.length; j++) {
      contacts[j] = contacts[j - 1] + 0.2 * (1 + 0.05 * random.nextGaussian());
    }
    return contacts;
  }

  private static List<Onset> onsets(double[] contacts, double late, double scatter, Random random) {
    List<Onset> onsets = new ArrayList<>();
    for (double contact : contacts) {
      onsets.add(new Onset(contact + late + scatter * random.nextGaussian(), 0.9));
    }
    return onsets;
  }

  /** A sound in which every onset stands out. */
  private static Onsets sound(List<Onset> onsets) {
    List<Onset> sorted = onsets.stream().sorted(Comparator.comparingDouble(Onset::timeS)).toList();
    return new Onsets(Curve.EMPTY, sorted, sorted);
  }

  @ParameterizedTest
  @ValueSource(doubles = {-0.08, 0, 0.004, 0.05, 0.08})
  void aConstantOffsetIsFound(double late) {
    Random random = new Random(1);
    double[] contacts = contacts(random);
    SoundMatch heard = SoundMatch.of(contacts, sound(onsets(contacts, late, 0.002, random)));
    assertTrue(heard.trusted());
    assertEquals(late, heard.offsetS(), 0.0015);
    assertEquals(25, heard.onsets().stream().filter(Objects::nonNull).count());
  }

  @Test
  void aMetronomeAndTalkBesideTheSlapsChangeNothing() {
    Random random = new Random(2);
    double[] contacts = contacts(random);
    List<Onset> all = new ArrayList<>(onsets(contacts, 0.004, 0.002, random));
    for (double t = 0.1; t < 7; t += 0.31) {
      all.add(new Onset(t, 1.4));
    }
    for (int i = 0; i < 20; i++) {
      all.add(new Onset(7 * random.nextDouble(), 0.6));
    }
    SoundMatch heard = SoundMatch.of(contacts, sound(all));
    assertTrue(heard.trusted());
    assertEquals(0.004, heard.offsetS(), 0.002);
  }

  @Test
  void puffsAfterEachContactAreNotTakenForIt() {
    Random random = new Random(3);
    double[] contacts = contacts(random);
    List<Onset> all = new ArrayList<>(onsets(contacts, 0.004, 0.001, random));
    all.addAll(onsets(contacts, 0.06, 0.015, random));
    SoundMatch heard = SoundMatch.of(contacts, sound(all));
    assertEquals(0.004, heard.offsetS(), 0.0015);
  }

  @ParameterizedTest
  @ValueSource(longs = {4, 5, 6, 7, 8, 9})
  void soundsThatHaveNothingToDoWithTheHandsAreNotTrusted(long seed) {
    Random random = new Random(seed);
    double[] contacts = contacts(random);
    List<Onset> all = new ArrayList<>();
    for (int i = 0; i < 18; i++) {
      all.add(new Onset(1 + 5 * random.nextDouble(), 1));
    }
    assertFalse(SoundMatch.of(contacts, sound(all)).trusted());
  }

  @Test
  void aContactThatIsNotHeardHasNoOnset() {
    Random random = new Random(10);
    double[] contacts = contacts(random);
    List<Onset> some = new ArrayList<>(onsets(contacts, 0, 0.001, random));
    some.remove(7);
    SoundMatch heard = SoundMatch.of(contacts, sound(some));
    assertEquals(24, heard.onsets().stream().filter(Objects::nonNull).count());
    assertNull(heard.onsets().get(7));
  }

  @Test
  void silenceIsNotTrusted() {
    assertFalse(SoundMatch.of(contacts(new Random(11)), Onsets.NONE).trusted());
  }

  @Test
  void inAQuietRoomAHandThatIsNotHeardTouchesNothing() {
    double[] contacts = contacts(new Random(12));
    assertTrue(SoundMatch.of(contacts, Onsets.NONE).hearsNoContacts());
  }

  @Test
  void noiseBeforeAndAfterLeavesTheRoomQuiet() {
    double[] contacts = contacts(new Random(13));
    List<Onset> around = new ArrayList<>();
    for (int i = 0; i < 20; i++) {
      around.add(new Onset(0.03 * i, 1));
      around.add(new Onset(8 + 0.03 * i, 1));
    }
    assertTrue(SoundMatch.of(contacts, sound(around)).hearsNoContacts());
  }

  @Test
  void talkOverTheHandsLeavesItOpenWhetherTheyTouch() {
    double[] contacts = contacts(new Random(14));
    List<Onset> talk = new ArrayList<>();
    for (int i = 0; i < 18; i++) {
      talk.add(new Onset(1 + 0.31 * i, 0.3));
    }
    assertFalse(SoundMatch.of(contacts, sound(talk)).hearsNoContacts());
  }
}
