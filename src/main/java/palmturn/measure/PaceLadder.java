package palmturn.measure;

import java.util.List;
import java.util.Objects;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import palmturn.trial.Hand;

/**
 * The paces of a hand's optional extra trials to a click track, which serve its clean ceiling and
 * nothing else.
 *
 * @param hand the moving hand
 * @param bestSlapsPerS its fastest trial without a click track
 * @param pacesSlapsPerS 60, 75 and 90 % of that, rounded to a tenth, the slowest first
 */
public record PaceLadder(Hand hand, double bestSlapsPerS, List<Double> pacesSlapsPerS) {
  private static final int[] SHARES_PCT = {60, 75, 90};

  public PaceLadder {
    pacesSlapsPerS = List.copyOf(pacesSlapsPerS);
  }

  /** Returns the ladder of each hand whose rate can be told, right before left. */
  public static List<PaceLadder> of(SessionScore score) {
    return Stream.of(Hand.RIGHT, Hand.LEFT).flatMap(hand -> of(score, hand)).toList();
  }

  private static Stream<PaceLadder> of(SessionScore score, Hand hand) {
    return score.hands().stream()
        .filter(each -> each.hand() == hand && each.quality() == Quality.SPEED)
        .map(HandScore::best)
        .filter(Objects::nonNull)
        .reduce(Math::max)
        .map(best -> new PaceLadder(hand, best, paces(best)))
        .stream();
  }

  private static List<Double> paces(double best) {
    return IntStream.of(SHARES_PCT)
        .mapToObj(share -> Math.round(share * best / 10) / 10.0)
        .toList();
  }

  /** Returns the share of the best that a pace stands for, before it was rounded, per cent. */
  public int sharePct(int pace) {
    return SHARES_PCT[pace];
  }
}
