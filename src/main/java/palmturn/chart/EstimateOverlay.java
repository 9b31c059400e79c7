package palmturn.chart;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import palmturn.trial.Curve;
import palmturn.trial.Estimate;
import palmturn.trial.EstimatedSlap;
import palmturn.trial.Reading;
import palmturn.trial.Side;
import palmturn.trial.Slap;
import palmturn.trial.Zone;

/**
 * An estimate as a beat strip shows it: hollow marks, since solid ink is a person's, and the curves
 * behind them. All times are media seconds on the picture's clock.
 *
 * @param slaps contacts found, in order of time
 * @param hidden for each of them whether a reader's mark already covers it
 * @param spans faults found over a stretch
 * @param turn about +1 and −1 where the hand lies with one side and the other, +1 with the palm if
 *     the sides are known
 * @param sound strength of onsets, 1 = a strong one
 * @param onsetsS onsets that belong to a contact
 */
public record EstimateOverlay(
    List<EstimatedSlap> slaps,
    List<Boolean> hidden,
    List<Estimate.EstimatedSpan> spans,
    Curve turn,
    Curve sound,
    List<Double> onsetsS) {

  /** Largest distance of two marks of one contact, or one frame if that is more. */
  public static final double SAME_S = 0.025;

  /** Under this confidence a mark is drawn as doubtful. */
  public static final double DOUBTFUL_UNDER = 0.5;

  /** Height of a double whose first contact stands on the line, pixels. */
  static final double BESIDE_THE_LINE = 18;

  public EstimateOverlay {
    slaps = List.copyOf(slaps);
    hidden = List.copyOf(hidden);
    spans = List.copyOf(spans);
    onsetsS = List.copyOf(onsetsS);
  }

  /**
   * Returns an estimate's overlay beside a reader's marks: a contact or span that a mark covers is
   * not drawn twice.
   */
  public static EstimateOverlay of(Estimate found, @Nullable Reading reading) {
    Estimate estimate = reading == null ? found : nameSides(found, reading);
    List<Boolean> hidden = new ArrayList<>();
    List<Double> onsetsS = new ArrayList<>();
    Double offsetS = estimate.soundOffsetS();
    for (EstimatedSlap slap : estimate.slaps()) {
      hidden.add(
          reading != null && reading.slaps().stream().anyMatch(mark -> isCovered(slap, mark)));
      Double soundS = slap.soundS();
      if (soundS != null) {
        onsetsS.add(soundS - (offsetS == null ? 0 : offsetS));
      }
    }
    List<Estimate.EstimatedSpan> spans =
        estimate.spans().stream()
            .filter(
                span ->
                    reading == null
                        || reading.spans().stream()
                            .noneMatch(
                                mark ->
                                    mark.kind() == span.kind()
                                        && mark.startS() < span.endS()
                                        && span.startS() < mark.endS()))
            .toList();
    return new EstimateOverlay(
        estimate.slaps(), hidden, spans, palmUp(estimate), estimate.traces().sound(), onsetsS);
  }

  /**
   * Names the sides of an estimate that knows only which contacts are alike, by a reader's marks.
   */
  private static Estimate nameSides(Estimate estimate, Reading reading) {
    @Nullable Slap upright = null;
    @Nullable Slap turned = null;
    int votes = 0;
    for (EstimatedSlap slap : estimate.slaps()) {
      if (slap.side() != Side.UNKNOWN) {
        return estimate;
      }
      for (Slap mark : reading.slaps()) {
        if (mark.side() == Side.UNKNOWN || slap.pose() == 0 || !isNear(slap, mark)) {
          continue;
        }
        boolean same = (mark.side() == Side.PALM) == (slap.pose() > 0);
        votes += same ? 1 : -1;
        upright = same ? mark : upright;
        turned = same ? turned : mark;
      }
    }
    Slap says = votes > 0 ? upright : votes < 0 ? turned : null;
    return says == null ? estimate : estimate.withKnownSide(says.timeS(), says.side());
  }

  /** Returns the turn curve with palm positive; its sign is arbitrary while no side is known. */
  private static Curve palmUp(Estimate estimate) {
    Curve turn = estimate.traces().turn();
    double palm = 0;
    int at = 0;
    for (EstimatedSlap slap : estimate.slaps()) {
      while (at < turn.timesS().size() - 1 && turn.timesS().get(at) < slap.timeS()) {
        at++;
      }
      if (slap.side() != Side.UNKNOWN && !turn.isEmpty()) {
        palm += turn.values().get(at) * (slap.side() == Side.PALM ? 1 : -1);
      }
    }
    return palm >= 0
        ? turn
        : new Curve(turn.timesS(), turn.values().stream().map(value -> -value).toList());
  }

  private static boolean isNear(EstimatedSlap found, Slap mark) {
    return Math.abs(mark.timeS() - found.timeS()) <= Math.max(SAME_S, mark.resolutionS());
  }

  /** Returns whether a reader's mark covers a detected contact. */
  private static boolean isCovered(EstimatedSlap found, Slap mark) {
    return isNear(found, mark)
        && mark.kind() != Slap.Kind.MISSED
        && (mark.kind() == Slap.Kind.DOUBLE) == found.isDouble()
        && (found.side() == Side.UNKNOWN || found.side() == mark.side())
        && (found.zone() == Zone.UNKNOWN || found.zone() == mark.zone());
  }

  /** Returns how many contacts are drawn. */
  public long countShown() {
    return hidden.stream().filter(each -> !each).count();
  }

  /** Returns whether a contact or its side is in doubt. */
  static boolean isDoubtful(EstimatedSlap slap) {
    return slap.confidence() < DOUBTFUL_UNDER
        || slap.side() != Side.UNKNOWN && slap.sideConfidence() < DOUBTFUL_UNDER;
  }

  /** Returns the place of the contact that a double repeats, −1 for none. */
  int repeated(int slap) {
    if (slaps.get(slap).isDouble()) {
      for (int i = slap - 1; i >= 0; i--) {
        if (!slaps.get(i).isDouble()) {
          return i;
        }
      }
    }
    return -1;
  }

  /**
   * Returns how far above the line a head stands, pixels: negative below it, 0 on it while the side
   * is unknown. A double of unknown side stands a little above what it repeats.
   */
  double stemHeight(int slap) {
    EstimatedSlap found = slaps.get(slap);
    if (found.isDouble()) {
      int repeated = repeated(slap);
      double height = repeated < 0 ? 0 : stemHeight(repeated);
      return height == 0 ? BESIDE_THE_LINE : height;
    }
    double height = found.zone().offCentre() ? 48 : 33;
    return switch (found.side()) {
      case PALM -> height;
      case BACK -> -height;
      case UNKNOWN -> found.zone().offCentre() ? height : 0;
    };
  }
}
