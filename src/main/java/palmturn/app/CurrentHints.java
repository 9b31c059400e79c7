package palmturn.app;

import java.util.ArrayList;
import java.util.List;
import palmturn.app.desk.Estimation;
import palmturn.app.desk.OpenSession;
import palmturn.app.desk.Review;
import palmturn.app.differences.ReviewItem;
import palmturn.app.hints.KeyHint;
import palmturn.app.hints.KeyHints;
import palmturn.app.marking.Marking;
import palmturn.app.stage.EstimateBar;
import palmturn.trial.Estimate;
import palmturn.trial.Reading;
import palmturn.trial.Slap;
import palmturn.trial.Zone;

/** The keys that are valid now, and the next use of the estimate, for the hints on the screen. */
record CurrentHints(
    KeyboardFocus focus,
    OpenSession session,
    Marking marking,
    Estimation estimation,
    Review review,
    InboxKeys inbox,
    FastKeys fast) {
  /** With fewer slaps a reading is hardly done; five seconds have about twenty. */
  private static final int ENOUGH = 10;

  /** Returns the next use of the estimate, where something does not stand in its way. */
  EstimateBar.Offer offer() {
    boolean idle = estimation.run().trialProperty().get() == null;
    Estimate made = estimation.shown().estimateProperty().get();
    Reading reading = marking.readingProperty().get();
    boolean unmarked = reading == null || reading.slaps().isEmpty();
    if (!onTrial() || !idle || estimation.shown().hiddenProperty().get()) {
      return EstimateBar.Offer.NOTHING;
    }
    if (made == null) {
      return unmarked ? EstimateBar.Offer.ESTIMATE : EstimateBar.Offer.NOTHING;
    }
    return unmarked && !made.slaps().isEmpty()
        ? EstimateBar.Offer.START
        : EstimateBar.Offer.NOTHING;
  }

  /** Returns the keys that are valid now, the most wanted first. */
  List<KeyHint> hints() {
    if (focus.inInbox()) {
      return inbox.hints();
    }
    if (focus.inPair()) {
      return KeyHints.PAIR;
    }
    if (focus.inDifferences()) {
      return ofDifferences();
    }
    List<KeyHint> now = fast.hints();
    if (!now.isEmpty()) {
      return now;
    }
    List<KeyHint> first = new ArrayList<>();
    List<KeyHint> last = new ArrayList<>();
    addEstimate(first, last);
    addMarks(first);
    if (review.offeredProperty().get()) {
      last.add(KeyHints.COMPARE);
    }
    return KeyHints.at(focus.hintsPlace(), first, last);
  }

  private void addEstimate(List<KeyHint> first, List<KeyHint> last) {
    boolean hidden = estimation.shown().hiddenProperty().get();
    // Who is to read blind is not reminded that there is something to see.
    if (!onTrial() || hidden && session.readsBlind()) {
      return;
    }
    if (estimation.shown().estimateProperty().get() == null) {
      first.add(KeyHints.ESTIMATE);
      return;
    }
    if (offer() == EstimateBar.Offer.START) {
      first.add(KeyHints.START);
    }
    last.add(hidden ? KeyHints.SHOW : KeyHints.HIDE);
    if (!hidden) {
      last.add(KeyHints.ESTIMATE_DETAILS);
    }
  }

  private void addMarks(List<KeyHint> first) {
    Reading reading = marking.readingProperty().get();
    if (!onTrial() || reading == null) {
      return;
    }
    if (reading.slaps().stream().anyMatch(CurrentHints::isUndecided)) {
      first.add(KeyHints.GO_THROUGH);
    } else if (reading.slaps().size() >= ENOUGH) {
      first.add(KeyHints.FINISH);
    }
  }

  private List<KeyHint> ofDifferences() {
    ReviewItem item = review.differences().current();
    if (focus.markingAfresh()) {
      return item instanceof ReviewItem.OfSpan ? KeyHints.NEW_SPAN : KeyHints.NEW_SLAP;
    }
    List<KeyHint> now =
        new ArrayList<>(item == null ? KeyHints.DIFFERENCES_END : KeyHints.DIFFERENCES);
    if (item != null && !item.open()) {
      now.add(now.size() - 1, KeyHints.REOPEN);
    }
    return now;
  }

  private boolean onTrial() {
    return focus.hintsPlace() == KeyHints.Context.TRIAL;
  }

  private static boolean isUndecided(Slap slap) {
    return !slap.seen() || slap.zone() == Zone.UNKNOWN && slap.kind() == Slap.Kind.SLAP;
  }
}
