package palmturn.app.differences;

import java.util.ArrayList;
import java.util.List;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import org.jspecify.annotations.Nullable;
import palmturn.app.look.Listeners;
import palmturn.app.look.Look;
import palmturn.clip.Picture;
import palmturn.settle.Difference;
import palmturn.trial.Estimate;
import palmturn.trial.Slap;
import palmturn.trial.Span;
import palmturn.trial.Trial;

/** Three pictures, 12 apart: before, the difference as it plays, after; or the two that differ. */
final class StillsRow extends HBox {
  private final DifferenceReview differences;
  private final StillView left;
  private final StillView middle;
  private final StillView right;

  StillsRow(DifferenceReview differences, Look look, Listeners listeners) {
    super(look.px(12));
    this.differences = differences;
    left = new StillView(look, false);
    middle = new StillView(look, true);
    right = new StillView(look, false);
    getStyleClass().setAll("stills");
    setMinWidth(0);
    for (StillView each : List.of(left, middle, right)) {
      HBox.setHgrow(each, Priority.ALWAYS);
    }
    getChildren().setAll(left, middle, right);
    showHands();
    listeners.onChange(differences.trialProperty(), this::showHands);
    listeners.onChange(differences.player().stills().leftProperty(), this::showSides);
    listeners.onChange(differences.player().stills().rightProperty(), this::showSides);
    listeners.onChange(differences.newMark().activeProperty(), this::showSides);
    listeners.onChange(differences.stage().pictureProperty(), this::showMiddle);
    listeners.onChange(differences.stage().playingProperty(), this::showMiddle);
    listeners.onChange(differences.stage().speedProperty(), this::showMiddle);
    listeners.onChange(differences.newMark().activeProperty(), this::showMiddle);
    showSides();
    showMiddle();
  }

  private void showSides() {
    showStill(left, differences.player().stills().leftProperty().get(), true);
    showStill(right, differences.player().stills().rightProperty().get(), false);
  }

  /** Zooms to the hands if their place is known. */
  private void showHands() {
    ReviewedTrial opened = differences.trialProperty().get();
    if (opened == null) {
      return;
    }
    Trial trial = opened.trial();
    Estimate made = trial.estimate();
    Estimate.Region hands = trial.places().handRegion();
    Estimate.Region region = hands == null && made != null ? made.handRegion() : hands;
    for (StillView each : List.of(left, middle, right)) {
      each.setRegion(region);
    }
  }

  private void showStill(StillView view, @Nullable Picture picture, boolean first) {
    ReviewItem item = differences.current();
    DifferenceWords wording = StavesLayout.wording(differences);
    if (picture == null || item == null || wording == null) {
      view.show(null, "", "", "");
      return;
    }
    view.show(
        picture,
        !differences.newMark().activeProperty().get() && DifferencePlayer.hasTwoMoments(item)
            ? endWords(item, wording, first)
            : first ? "previous frame" : "next frame",
        wording.time(picture.timeS()),
        marksOn(item, wording, picture));
  }

  private static String endWords(ReviewItem item, DifferenceWords wording, boolean first) {
    Difference<?> difference = item.difference();
    if (item instanceof ReviewItem.OfSpan) {
      return first ? "the start" : "the end";
    }
    boolean secondIsLater = difference.gapS() >= 0;
    return wording.readingName(first != secondIsLater) + "’s frame";
  }

  private void showMiddle() {
    Picture picture = differences.stage().pictureProperty().get();
    ReviewItem item = differences.current();
    DifferenceWords wording = StavesLayout.wording(differences);
    if (picture == null || item == null || wording == null) {
      middle.show(null, "", "", "");
      return;
    }
    boolean playing = differences.stage().playingProperty().get();
    middle.show(
        picture,
        playing
            ? "playing at " + differences.stage().speedProperty().get().words()
            : differences.newMark().activeProperty().get() ? "your frame" : "this frame",
        wording.time(picture.timeS()),
        marksOn(item, wording, picture));
  }

  /** Returns both readings' marks on a frame. */
  private String marksOn(ReviewItem item, DifferenceWords wording, Picture picture) {
    ReviewedTrial opened = differences.trialProperty().get();
    if (opened == null) {
      return "";
    }
    List<String> words = new ArrayList<>();
    for (boolean second : new boolean[] {false, true}) {
      Object mark = second ? item.difference().b() : item.difference().a();
      String name = wording.name(second) + ": ";
      if (mark instanceof Slap slap && opened.frames().nearest(slap.timeS()) == picture.index()) {
        words.add(name + DifferenceWords.shortLabel(slap));
      } else if (mark instanceof Span span && span.contains(picture.timeS())) {
        words.add(name + palmturn.wording.MarkNames.fault(span.kind()));
      }
    }
    return String.join("   ", words);
  }
}
