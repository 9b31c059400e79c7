package palmturn.numbers;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class ButterworthTest {
  private static final int[] SHOWN = {0, 1, 17, 30, 58, 59};

  /** SciPy 1.17.1, computed once: butter(…, output='sos'), then sosfilt and sosfiltfilt. */
  static Stream<Arguments> scipy() {
    return Stream.of(
        Arguments.of(
            "low pass, order 4, 6 Hz at 60",
            Butterworth.lowPass(4, 6, 60),
            "0.0 0.006995297868688531 1.8437348914966252 2.2487284918778676 6.81944493096637"
                + " 6.864133711672047",
            "-0.00901699353434584 0.45601986235844816 2.180930480211283 4.383927468168471"
                + " 7.582433375376638 8.043396666239182"),
        Arguments.of(
            "low pass, order 3, 10 Hz at 60",
            Butterworth.lowPass(3, 10, 60),
            "0.0 0.09259109057209076 1.8243161319020815 2.457211870439437 6.774269505847526"
                + " 6.8264014166623985",
            "0.0005871549096391759 0.7838867908859477 2.178870041552729 4.62420276308927"
                + " 7.265927897705343 8.049340653578703"),
        Arguments.of(
            "low pass, order 2, 1.5 Hz at 30",
            Butterworth.lowPass(2, 1.5, 30),
            "0.0 0.029120880068106286 1.805226766034944 2.2996096307070144 6.702967640318268"
                + " 6.772391685326291",
            "-0.014998989179605175 0.2671397427893476 1.9701729336029548 4.219994124752043"
                + " 7.785036908111514 8.05611793602379"),
        Arguments.of(
            "high pass, order 2, 0.5 Hz at 60",
            Butterworth.highPass(2, 0.5, 60),
            "0.0 1.3972965077480515 0.2569758708949186 2.6769152639694433 -0.8010220944685367"
                + " 0.536573671834109",
            "-0.2280143241465331 1.1246276989515405 -0.49364983768563175 1.1971765276141113"
                + " -1.4428296843260968 -0.1468239878587384"),
        Arguments.of(
            "high pass, order 3, 5 Hz at 60",
            Butterworth.highPass(3, 5, 60),
            "0.0 0.8535789451624786 -0.31352009370915435 1.410592670688871 -0.292638715571566"
                + " 0.8030272490949495",
            "-0.007998097268284876 1.0405947985930621 -0.5073651012735673 0.7862758397162938"
                + " -1.0452157827725304 0.011518051768214188"),
        Arguments.of(
            "band pass, order 2, 1 to 6 Hz at 60",
            Butterworth.bandPass(2, 1, 6, 60),
            "0.0 0.07176043658958173 -0.0033003894628080843 -0.10391850774057865"
                + " -0.5267876875935587 -0.46662985603226215",
            "0.10933616567574478 0.4875468211589977 0.030521486918791335 0.251015243272912"
                + " -0.5127522765447767 -0.15982744166820112"),
        Arguments.of(
            "band pass, order 3, 1 to 8 Hz at 60",
            Butterworth.bandPass(3, 1, 8, 60),
            "0.0 0.038705305324477815 -0.252720035466253 -0.06798770842119839"
                + " -0.17643967602359445 -0.15678256942900437",
            "0.18281664572074657 0.6745529677162952 -0.0805298596112698 0.37417001935799743"
                + " -0.8233370079038509 -0.3363938511253095"),
        Arguments.of(
            "band pass with two real poles, order 1, 0.5 to 28 Hz at 60",
            Butterworth.bandPass(1, 0.5, 28, 60),
            "0.0 1.281312066284746 0.821697532048146 3.251411456835549 1.3768701502087257"
                + " 2.382175712913509",
            "-0.6767997993569326 0.6049603987008743 -0.8201199282696445 0.6689275076250385"
                + " -1.6358661977643867 -0.4544733894146553"));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("scipy")
  void equalsScipy(String name, Butterworth filter, String once, String bothWays) {
    double[] x = sawWithStep();
    assertArrayEquals(StatsTest.numbers(once), shown(filter.filter(x)), 1e-9);
    assertArrayEquals(StatsTest.numbers(bothWays), shown(filter.filtfilt(x)), 1e-9);
  }

  @ParameterizedTest
  @ValueSource(ints = {0, 1, 2, 3, 9, 14, 15, 16, 17})
  void anySeriesHoweverShortIsFiltered(int length) {
    double[] x = new double[length];
    Arrays.fill(x, 4.5);
    assertArrayEquals(x, Butterworth.lowPass(4, 6, 60).filtfilt(x), 1e-9);
    assertArrayEquals(new double[length], Butterworth.highPass(3, 6, 60).filtfilt(x), 1e-9);
    assertEquals(length, Butterworth.bandPass(2, 1, 6, 60).filtfilt(x).length);
  }

  @Test
  void aSineAtTheCutIsHalvedAndNotDelayed() {
    double[] x = new double[1200];
    for (int i = 0; i < x.length; i++) {
      x[i] = Math.sin(2 * Math.PI * 6 * i / 60);
    }
    double[] y = Butterworth.lowPass(4, 6, 60).filtfilt(x);
    for (int i = 300; i < 900; i++) {
      assertEquals(x[i] / 2, y[i], 1e-6);
    }
  }

  @Test
  void theInputIsLeftAsItWas() {
    double[] x = sawWithStep();
    Butterworth.lowPass(4, 6, 60).filtfilt(x);
    assertArrayEquals(sawWithStep(), x);
  }

  @Test
  void aCutThatTheRateCannotCarryIsRefused() {
    String message =
        assertThrows(IllegalArgumentException.class, () -> Butterworth.lowPass(2, 12, 24))
            .getMessage();
    assertTrue(message.contains("12.0 Hz"), message);
    assertThrows(IllegalArgumentException.class, () -> Butterworth.highPass(2, 0, 24));
    assertThrows(IllegalArgumentException.class, () -> Butterworth.bandPass(2, 5, 5, 24));
    assertThrows(IllegalArgumentException.class, () -> Butterworth.lowPass(0, 5, 24));
  }

  static double[] sawWithStep() {
    double[] x = new double[60];
    for (int i = 0; i < x.length; i++) {
      x[i] = (i * 37 % 23) / 10.0 + 0.05 * i + (i >= 30 ? 3 : 0);
    }
    return x;
  }

  static double[] shown(double[] series) {
    return Arrays.stream(SHOWN).mapToDouble(i -> series[i]).toArray();
  }
}
