package palmturn.lab.draw;

import java.util.Random;
import palmturn.trial.Side;
import palmturn.trial.Slap;
import palmturn.trial.Zone;

/** The sound of a slap: a short burst of noise with the ring of two cupped hands. */
final class SlapSound {
  private SlapSound() {}

  /** One slap from its very onset; its first milliseconds are the loudest. */
  static double[] of(Contact contact, Random random) {
    boolean palm = contact.side() == Side.PALM;
    boolean dull = contact.zone() != Zone.CENTRE || contact.kind() != Slap.Kind.SLAP;
    double ring = (palm ? 780 : 1020) * (1 + 0.05 * random.nextGaussian());
    double decayS = palm ? 0.0062 : 0.0045;
    double smooth = dull ? 0.45 : palm ? 0.72 : 0.62;
    double[] out = new double[(int) (0.045 * RoomSound.HZ)];
    double low = 0;
    for (int i = 0; i < out.length; i++) {
      double t = (double) i / RoomSound.HZ;
      low += smooth * (random.nextGaussian() - low);
      double burst = low * Math.exp(-t / decayS);
      double body = 0.42 * Math.sin(2 * Math.PI * ring * t) * Math.exp(-t / 0.009);
      double edge = 1 - Math.exp(-t / 0.00015);
      out[i] = (0.85 * burst + body + 0.9 * Math.exp(-t / 0.0004)) * edge;
    }
    return out;
  }
}
