package palmturn.trial;

import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** A length of the athlete's body that gives an estimate its scale, with its plausible range. */
public enum BodyLength {
  FOREARM(0, 10, 100),
  /** Wrist crease to tip of the middle finger, held flat. */
  HAND(8, 8, 30),
  STATURE(0, 50, 300);

  private final double leastKeptCm;
  private final double leastCm;
  private final double mostCm;

  BodyLength(double leastKeptCm, double leastCm, double mostCm) {
    this.leastKeptCm = leastKeptCm;
    this.leastCm = leastCm;
    this.mostCm = mostCm;
  }

  /** Returns the least length that a file may hold, however unlikely; above 0. */
  public double leastKeptCm() {
    return leastKeptCm;
  }

  /** Returns the greatest plausible length, cm. */
  public double mostCm() {
    return mostCm;
  }

  /** Returns whether a length is plausible; metres typed for centimetres are not. */
  public boolean fits(double cm) {
    return cm >= leastCm && cm <= mostCm;
  }

  /** Returns the plausible range in words, such as "from 8 to 30". */
  public String bounds() {
    return String.format(Locale.ROOT, "from %.0f to %.0f", leastCm, mostCm);
  }

  /** Returns the length that a session states, cm; null where it states none. */
  public @Nullable Double of(Session.Facts facts) {
    return switch (this) {
      case FOREARM -> facts.forearmCm();
      case HAND -> facts.handCm();
      case STATURE -> facts.statureCm();
    };
  }
}
