package palmturn.app.stage;

import java.util.Objects;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import palmturn.app.keys.Action;
import palmturn.trial.PlacedPoints;

/** An item of the overlay that can be set by hand and hidden. */
public enum OverlayItem {
  HAND(Action.PLACE_HAND, "moving hand"),
  ELBOW(Action.PLACE_ELBOW, "elbow"),
  TRUNK(Action.PLACE_TRUNK, "trunk"),
  SCALE(Action.PLACE_SCALE, "scale"),
  TARGET(Action.PLACE_TARGET, "target palm");

  private final Action action;
  private final String words;

  OverlayItem(Action action, String words) {
    this.action = action;
    this.words = words;
  }

  /** Returns what chooses it while places are set. */
  public Action action() {
    return action;
  }

  /** Returns the names of what lies elsewhere than before, in words. */
  public static String namesOfChanged(PlacedPoints before, PlacedPoints now) {
    return Stream.of(values())
        .filter(each -> !Objects.equals(each.of(before), each.of(now)))
        .map(OverlayItem::words)
        .collect(Collectors.joining(", "));
  }

  private @Nullable Object of(PlacedPoints places) {
    return switch (this) {
      case HAND -> places.handRegion();
      case ELBOW -> places.elbow();
      case TRUNK -> places.trunk();
      case SCALE -> places.scale();
      case TARGET -> places.target();
    };
  }

  /** Returns its name on the picture. */
  public String words() {
    return words;
  }
}
