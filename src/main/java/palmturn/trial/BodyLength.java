package palmturn.trial;

import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** A length of the athlete's body that gives an estimate its centimetres, and what it can be. */
public enum BodyLength {
  FOREARM(0, 100),
  /** Wrist crease to tip of the middle finger, held flat. */
  HAND(8, 30),
  STATURE(0, 300);

  private final double leastCm;
  private final double mostCm;

  BodyLength(double leastCm, double mostCm) {
    this.leastCm = leastCm;
    this.mostCm = mostCm;
  }

  /** Returns the least that it can be; 0 itself is none. */
  public double leastCm() {
    return leastCm;
  }

  /** Returns the most that it can be. */
  public double mostCm() {
    return mostCm;
  }

  /** Returns whether it can be so long; no number at all can't. */
  public boolean fits(double cm) {
    return cm > 0 && cm >= leastCm && cm <= mostCm;
  }

  /** Returns what it can be in words, such as "from 8 to 30". */
  public String bounds() {
    String form = leastCm == 0 ? "above 0, up to %2$.0f" : "from %1$.0f to %2$.0f";
    return String.format(Locale.ROOT, form, leastCm, mostCm);
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
