package palmturn.lab.draw;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import palmturn.trial.Side;
import palmturn.trial.Slap;
import palmturn.trial.Zone;

/** The contacts of a clip: their moments, sides, zones, kinds and loudness. */
final class ContactSchedule {
  /** The usual delay of a second contact after its slap; a rebound takes about so long. */
  private static final double DOUBLE_AFTER_S = 0.078;

  /**
   * The longest such delay, as a share of the mean interval, so that it ends before the next slap.
   */
  private static final double DOUBLE_WITHIN = 0.45;

  private ContactSchedule() {}

  static List<Contact> of(ClipParameters wanted) {
    if (wanted.content() != ClipContent.SLAPS) {
      return List.of();
    }
    double doubleAfterS = Math.min(DOUBLE_AFTER_S, DOUBLE_WITHIN / wanted.tempo().rateSlapsPerS());
    Random random = new Random(wanted.seed());
    double[] times = times(wanted, random);
    List<Contact> contacts = new ArrayList<>();
    for (int i = 0; i < times.length; i++) {
      Side side = i % 2 == 0 ? Side.PALM : Side.BACK;
      Zone zone = Zone.CENTRE;
      Slap.Kind kind = Slap.Kind.SLAP;
      boolean twice = false;
      for (ClipParameters.Fault fault : wanted.faults()) {
        if (nearest(times, wanted.firstSlapS() + fault.atS()) != i) {
          continue;
        }
        switch (fault.kind()) {
          case FINGERS -> zone = Zone.FINGERS;
          case WRIST -> zone = Zone.WRIST;
          case EDGE -> zone = Zone.EDGE;
          case PART_TURN -> kind = Slap.Kind.PART_TURN;
          case MISSED -> kind = Slap.Kind.MISSED;
          case DOUBLE -> twice = true;
        }
      }
      double spread = 1 + 0.12 * random.nextGaussian();
      contacts.add(new Contact(times[i], side, zone, kind, level(kind, zone) * spread));
      double after = doubleAfterS * (1 + 0.08 * random.nextGaussian());
      if (twice) {
        Slap.Kind second = Slap.Kind.DOUBLE;
        contacts.add(new Contact(times[i] + after, side, zone, second, level(second, zone)));
      }
    }
    return contacts;
  }

  private static double level(Slap.Kind kind, Zone zone) {
    double byZone =
        switch (zone) {
          case FINGERS -> 0.6;
          case WRIST -> 0.55;
          case EDGE -> 0.5;
          default -> 1;
        };
    return switch (kind) {
      case MISSED -> 0;
      case DOUBLE -> 0.45 * byZone;
      case PART_TURN -> 0.5 * byZone;
      default -> byZone;
    };
  }

  private static double[] times(ClipParameters wanted, Random random) {
    double mean = 1 / wanted.tempo().rateSlapsPerS();
    int most = (int) Math.ceil(wanted.length().slappingS() / mean * 1.5) + 2;
    // The draws are brought to mean 0 and SD 1 over what fits, so that a clip has what was asked.
    int fits = Math.max(2, (int) Math.floor(wanted.length().slappingS() / mean));
    double[] noise = new double[most];
    for (int i = 0; i < most; i++) {
      noise[i] = Math.max(-2.2, Math.min(2.2, random.nextGaussian()));
    }
    standardise(noise, fits);
    double slope = Math.log(1 + wanted.tempo().slowDownPctPerS() / 100);
    double end = wanted.slappingEndS();
    List<Double> times = new ArrayList<>();
    double at = wanted.firstSlapS();
    for (int i = 0; i < most && at <= end; i++) {
      times.add(at);
      double bias = (i % 2 == 0 ? 0.5 : -0.5) * wanted.tempo().turnBiasPct() / 100;
      double slow = Math.exp(slope * (at - wanted.firstSlapS() - wanted.length().slappingS() / 2));
      at += mean * slow * (1 + bias + noise[i] * wanted.tempo().intervalCvPct() / 100);
    }
    return times.stream().mapToDouble(Double::doubleValue).toArray();
  }

  private static void standardise(double[] values, int count) {
    double sum = 0;
    for (int i = 0; i < count; i++) {
      sum += values[i];
    }
    double mean = sum / count;
    double squares = 0;
    for (int i = 0; i < count; i++) {
      squares += (values[i] - mean) * (values[i] - mean);
    }
    double sd = Math.sqrt(squares / (count - 1));
    for (int i = 0; i < values.length; i++) {
      values[i] = (values[i] - mean) / sd;
    }
  }

  private static int nearest(double[] times, double to) {
    int best = 0;
    for (int i = 1; i < times.length; i++) {
      if (Math.abs(times[i] - to) < Math.abs(times[best] - to)) {
        best = i;
      }
    }
    return best;
  }
}
