package palmturn.estimate.hands;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import palmturn.numbers.Confidence;
import palmturn.numbers.Range;
import palmturn.numbers.Robust;
import palmturn.numbers.Stats;

/**
 * The hand's angles of turn between contacts on the centre, in degrees. The knuckles' line, square
 * to the hand's own length in the picture, is as wide as the cosine of the hand's turn away from
 * facing the camera; its sign distinguishes palm from back. The trial's widest is the hand facing
 * the camera. That needs no depth, and neither the camera's position nor the hand's size.
 *
 * @param turns one for each turn whose both ends were seen on the centre, in order
 * @param medianDeg their median
 * @param change from the first to the last third of the trial's time; null where one has too few
 */
record TurnRange(List<Turn> turns, double medianDeg, @Nullable Change change) {
  /** Time around a contact in which the hand rests on the target. */
  private static final double AROUND_S = 0.035;

  /** Blurred hands look narrow; only clear ones count for the widest. */
  private static final double CLEAR_PRESENCE = 0.8;

  /** Quantile taken for the widest, so that single errors don't count. */
  private static final double WIDEST = 0.98;

  /** Time around the midpoint of a turn over which the width is averaged. */
  private static final double HALF_WAY_S = 0.03;

  /**
   * The least share of its width that the hand shows at the midpoint, to know the sense of
   * rotation.
   */
  private static final double LEAST_HALF_WAY = 0.25;

  /** The least that a side usually shows: a hand seen edge on misleads the network. */
  private static final double LEAST_SHOWN = 0.3;

  /**
   * The most that a side's look may scatter from one central contact to its next. In drawn clips of
   * two makers it was up to 0.06 where the turns were right, from 0.11 where they were not.
   */
  private static final double MOST_SCATTER = 0.085;

  /** Fewer contacts of a side, or turns in a third, give no steady mean. */
  private static final int FEWEST = 4;

  private static final int FEWEST_IN_THIRD = 3;

  /**
   * A turn.
   *
   * @param timeS half-way between its contacts, real seconds
   * @param deg from one contact to the other
   */
  record Turn(double timeS, double deg) {}

  /**
   * The change of the turn over the trial.
   *
   * @param firstDeg mean of the first third
   * @param lastDeg mean of the last third
   * @param interval of last less first (Welch 1947), under 0 where the turn shrank
   */
  record Change(double firstDeg, double lastDeg, Range interval) {}

  TurnRange {
    turns = List.copyOf(turns);
  }

  /**
   * A central contact. Off the centre a hand rests on an edge or a slope, which is no measure of
   * its turn.
   *
   * @param index of the contact
   * @param shown width of the palm as a share of the widest, under 0 of the back
   */
  private record CentralContact(int index, PosedContact touch, double shown) {
    /** Returns whether the hand turned from this contact to the next one. */
    boolean turnsTo(CentralContact next) {
      return next.index == index + 1 && next.touch.pose() != touch.pose();
    }
  }

  /**
   * Returns the turns, null where the hand is seen too poorly to measure them.
   *
   * @param touches with the poses that all sources together give
   * @param central for each, whether it landed on the middle of the target
   */
  static @Nullable TurnRange of(
      HandPaths paths, List<PosedContact> touches, List<Boolean> central) {
    double[] widths =
        paths.moving().stream()
            .filter(seen -> seen.marks().presence() > CLEAR_PRESENCE)
            .mapToDouble(seen -> Math.abs(seen.marks().across()))
            .toArray();
    double widest = widths.length == 0 ? 0 : Robust.quantile(widths, WIDEST);
    if (widest <= 0) {
      return null;
    }
    List<CentralContact> looks = new ArrayList<>();
    for (int i = 0; i < touches.size(); i++) {
      PosedContact touch = touches.get(i);
      Double shown = shown(paths, touch.timeS(), AROUND_S);
      if (shown != null && touch.pose() != 0 && central.get(i)) {
        looks.add(new CentralContact(i, touch, shown / widest));
      }
    }
    if (!clear(looks, 1) || !clear(looks, -1)) {
      return null;
    }
    Double halfWay = halfWay(paths, looks);
    if (halfWay == null || Math.abs(halfWay) < LEAST_HALF_WAY * widest) {
      return null;
    }
    return of(turns(looks, halfWay > 0), looks);
  }

  private static TurnRange of(List<Turn> turns, List<CentralContact> looks) {
    double startS = looks.get(0).touch().timeS();
    double thirdS = (looks.get(looks.size() - 1).touch().timeS() - startS) / 3;
    double[] first = degrees(turns, startS, startS + thirdS);
    double[] last = degrees(turns, startS + 2 * thirdS, startS + 3 * thirdS);
    Change change =
        Math.min(first.length, last.length) < FEWEST_IN_THIRD
            ? null
            : new Change(
                mean(first), mean(last), Objects.requireNonNull(Confidence.welch(last, first)));
    return new TurnRange(
        turns, Robust.median(turns.stream().mapToDouble(Turn::deg).toArray()), change);
  }

  private static double mean(double[] values) {
    return Objects.requireNonNull(Stats.mean(values));
  }

  private static double[] degrees(List<Turn> turns, double fromS, double toS) {
    return turns.stream()
        .filter(turn -> turn.timeS() >= fromS && turn.timeS() <= toS)
        .mapToDouble(Turn::deg)
        .toArray();
  }

  /** Returns whether a side was seen well enough, often enough. */
  private static boolean clear(List<CentralContact> looks, int pose) {
    double[] shown =
        looks.stream()
            .filter(look -> look.touch().pose() == pose)
            .mapToDouble(CentralContact::shown)
            .toArray();
    if (shown.length < FEWEST) {
      return false;
    }
    double[] steps = new double[shown.length - 1];
    for (int i = 0; i < steps.length; i++) {
      steps[i] = Math.abs(shown[i + 1] - shown[i]);
    }
    // From one to the next, so that a turn which shrinks slowly is no scatter.
    return Math.abs(Robust.median(shown)) > LEAST_SHOWN
        && Robust.SD_OF_MAD * Robust.median(steps) / Math.sqrt(2) < MOST_SCATTER;
  }

  private static List<Turn> turns(List<CentralContact> looks, boolean byPalm) {
    List<Turn> turns = new ArrayList<>();
    for (int i = 1; i < looks.size(); i++) {
      CentralContact from = looks.get(i - 1);
      CentralContact to = looks.get(i);
      if (from.turnsTo(to)) {
        double both = fromOpen(from.shown()) + fromOpen(to.shown());
        turns.add(
            new Turn((from.touch().timeS() + to.touch().timeS()) / 2, byPalm ? both : 360 - both));
      }
    }
    return turns;
  }

  /** Returns the angle from the palm facing the camera, 0 to 180°. */
  private static double fromOpen(double shown) {
    return Math.toDegrees(Math.acos(Math.max(-1, Math.min(1, shown))));
  }

  /** Returns the palm's usual width half-way between contacts by either side, pixels. */
  private static @Nullable Double halfWay(HandPaths paths, List<CentralContact> looks) {
    List<Double> widths = new ArrayList<>();
    for (int i = 1; i < looks.size(); i++) {
      if (looks.get(i - 1).turnsTo(looks.get(i))) {
        double middleS = (looks.get(i - 1).touch().timeS() + looks.get(i).touch().timeS()) / 2;
        Double width = shown(paths, middleS, HALF_WAY_S);
        if (width != null) {
          widths.add(width);
        }
      }
    }
    return widths.size() < FEWEST
        ? null
        : Robust.median(widths.stream().mapToDouble(Double::doubleValue).toArray());
  }

  /** Returns the palm's width in the picture around a moment, pixels; null where it is not seen. */
  private static @Nullable Double shown(HandPaths paths, double timeS, double aroundS) {
    return paths.mean(timeS, aroundS, paths::palmAcross);
  }
}
