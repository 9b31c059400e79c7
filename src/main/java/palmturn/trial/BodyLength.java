package palmturn.trial;

import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** A length of the athlete's body that gives an estimate its centimetres, and what it can be. */
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

  /** Returns the least that a file may hold, however unlikely; 0 itself is none. */
  public double leastKeptCm() {
    return leastKeptCm;
  }

  /** Returns the most that it can be. */
  public double mostCm() {
    return mostCm;
  }

  /** Returns whether somebody's can be so long; metres typed for centimetres can't. */
  public boolean fits(double cm) {
    return cm >= leastCm && cm <= mostCm;
  }

  /** Returns what it can be in words, such as "from 8 to 30". */
  public String bounds() {
    return String.format(Locale.ROOT, "from %.0f to %.0f", leastCm, mostCm);
  }

  /** Returns what a session says of it, cm; null where that was not said. */
  public @Nullable Double of(Session.Facts facts) {
    return switch (this) {
      case FOREARM -> facts.forearmCm();
      case HAND -> facts.handCm();
      case STATURE -> facts.statureCm();
    };
  }
}
