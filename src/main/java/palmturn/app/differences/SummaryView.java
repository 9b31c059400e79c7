package palmturn.app.differences;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import palmturn.app.look.Look;
import palmturn.app.look.Nodes;
import palmturn.settle.ReadingComparison;
import palmturn.settle.SettledTrial;
import palmturn.trial.Decision;
import palmturn.trial.Slap;

/** The end of a review: settled, or the differences still open. */
final class SummaryView extends StackPane {
  private static final int MOST = 200;

  private final DifferenceReview differences;
  private final Look look;
  private final VBox lines;

  SummaryView(DifferenceReview differences, Look look) {
    this.differences = differences;
    this.look = look;
    lines = new VBox(look.px(6));
    ScrollPane scroll = new ScrollPane(lines);
    Nodes.scrollVertically(scroll);
    setMinHeight(0);
    setId("end");
    getChildren().setAll(scroll);
  }

  String title() {
    SettledTrial settled = differences.settledProperty().get();
    List<ReviewItem> all = differences.itemsProperty().get();
    if (settled == null) {
      return "Comparing…";
    }
    if (all.isEmpty()) {
      return differences.savedProperty().get() ? "Settled: nothing differs" : "Nothing differs";
    }
    return settled.open() == 0 ? "Settled" : settled.open() + " still open";
  }

  String explanation() {
    SettledTrial settled = differences.settledProperty().get();
    DifferenceWords wording = StavesLayout.wording(differences);
    if (settled == null || wording == null) {
      return "";
    }
    ReadingComparison comparison = settled.comparison();
    String within = String.format(Locale.ROOT, "%.0f ms", 1000 * comparison.tolerance().seconds());
    if (comparison.differences() == 0) {
      return String.format(
          Locale.ROOT,
          "%d marks are in both, at most %s apart.",
          comparison.matching().pairs().size(),
          within);
    }
    long slaps = settled.reading().slaps().stream().filter(Slap::counts).count();
    return settled.open() == 0
        ? String.format(
            Locale.ROOT,
            "All differences are decided. The settled reading has %d slaps and counts from now on, in the report too.",
            slaps)
        : "Until the rest is decided, the marks of %s stand.".formatted(wording.readingName(false));
  }

  void show() {
    lines.getChildren().clear();
    DifferenceWords wording = StavesLayout.wording(differences);
    if (wording == null) {
      return;
    }
    List<ReviewItem> all = differences.itemsProperty().get();
    List<ReviewItem> told = all.stream().filter(ReviewItem::open).toList();
    boolean settled = told.isEmpty();
    for (ReviewItem item : (settled ? all : told).stream().limit(MOST).toList()) {
      Decision<?> decision = item.decision();
      List<String> words = new ArrayList<>(List.of(wording.time(item.fromS())));
      words.add(wording.title(item));
      if (settled && decision != null) {
        words.add(wording.decisionSentence(decision));
      }
      lines.getChildren().add(Nodes.wrapped(String.join("   ", words), "explanation"));
    }
    lines.setMaxWidth(look.px(900));
  }
}
