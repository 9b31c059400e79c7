package palmturn.app.sheet;

import java.util.List;
import java.util.Locale;
import javafx.geometry.HPos;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.VBox;
import palmturn.advise.Caution;
import palmturn.app.look.Listeners;
import palmturn.app.look.Look;
import palmturn.app.look.Nodes;
import palmturn.app.session.PaceLadders;
import palmturn.measure.PaceLadder;
import palmturn.trial.Hand;

/** The paces of each hand's pace ladder, and how to use them. */
final class LadderSheet {
  private static final double WIDTH = 620;
  private static final double SECONDS = 60;

  private final PaceLadders ladder;
  private final Look look;
  private final HBox hands;

  LadderSheet(PaceLadders ladder, Look look) {
    this.ladder = ladder;
    this.look = look;
    hands = new HBox(look.px(48));
  }

  /** Returns the sheet's content, which follows the ladder until the end. */
  List<Node> content(Listeners listeners) {
    Label words = wrapped("", "second");
    words.setId("ladder-words");
    Nodes.bindText(words, ladder.wordsProperty());
    hands.managedProperty().bind(ladder.handsProperty().map(all -> !all.isEmpty()));
    listeners.onValue(ladder.handsProperty(), this::show);
    Label cautions = wrapped(Caution.PAIN.text() + " " + Caution.SORE.text(), "small");
    cautions.setId("ladder-cautions");
    return List.of(
        wrapped(
            "Extra trials to a click track show how fast each hand can go and still be clean."
                + " One at each pace, the slowest first: four low clicks count in, then a slap on"
                + " every high one. They are used for the clean ceiling only.",
            "second"),
        hands,
        wrapped(
            "Enter the pace when you add each clip: without it, a slower trial would count"
                + " among the others.",
            "second"),
        words,
        cautions);
  }

  private void show(List<PaceLadder> all) {
    hands.getChildren().clear();
    for (Hand hand : List.of(Hand.LEFT, Hand.RIGHT)) {
      all.stream()
          .filter(each -> each.hand() == hand)
          .forEach(each -> hands.getChildren().add(hand(each)));
    }
  }

  private VBox hand(PaceLadder of) {
    Label name = Nodes.label(of.hand() == Hand.LEFT ? "Left hand" : "Right hand", "strong");
    Label best = Nodes.label(format("own best %.2f slaps/s", of.bestSlapsPerS()), "second");
    GridPane grid = new GridPane(look.px(24), look.px(4));
    grid.setId("ladder-" + of.hand().code());
    for (int i = 0; i < of.pacesSlapsPerS().size(); i++) {
      double pace = of.pacesSlapsPerS().get(i);
      addCell(grid, 0, i, of.sharePct(i) + " %", "second");
      addCell(grid, 1, i, format("%.1f slaps/s", pace), "plain");
      addCell(grid, 2, i, format("%.0f clicks/min", pace * SECONDS), "second");
    }
    return new VBox(look.px(8), name, best, grid);
  }

  private static void addCell(GridPane grid, int column, int row, String words, String style) {
    Label label = Nodes.whole(words, style);
    GridPane.setHalignment(label, HPos.RIGHT);
    grid.add(label, column, row);
  }

  private Label wrapped(String text, String style) {
    Label label = Nodes.wrapped(text, style);
    label.setPrefWidth(look.px(WIDTH));
    return label;
  }

  private static String format(String form, double value) {
    return String.format(Locale.ROOT, form, value);
  }
}
