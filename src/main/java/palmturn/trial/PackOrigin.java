package palmturn.trial;

import java.time.Instant;
import java.util.Comparator;

/**
 * The pack that brought something.
 *
 * @param at when it was packed, as the pack says
 * @param place in the pack, among its like, from 0
 */
public record PackOrigin(Instant at, int place) implements Comparable<PackOrigin> {
  private static final Comparator<PackOrigin> ORDER =
      Comparator.comparing(PackOrigin::at).thenComparing(PackOrigin::place);

  @Override
  public int compareTo(PackOrigin other) {
    return ORDER.compare(this, other);
  }
}
