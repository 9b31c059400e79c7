package palmturn.app.progress;

import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import javafx.scene.Node;
import javafx.scene.canvas.Canvas;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.VBox;
import palmturn.app.look.Listeners;
import palmturn.app.look.Look;
import palmturn.app.look.Nodes;
import palmturn.app.strip.StripGraphics;
import palmturn.chart.ProgressChart;
import palmturn.measure.Limit;
import palmturn.measure.Limits;
import palmturn.measure.Measure;
import palmturn.measure.Measures;
import palmturn.measure.Phrases;
import palmturn.measure.ProgressScore;
import palmturn.measure.Quality;
import palmturn.trial.Hand;
import palmturn.wording.CourseSentences;
import palmturn.work.score.AthleteProgress;

/** The pane of an athlete's progress: a chart for each quality, and a sentence for each hand. */
public final class ProgressView extends VBox {
  private static final double WIDTH = 760;
  private static final double MOST_HEIGHT = 560;

  private final ProgressModel past;
  private final Look look;
  private final VBox charts;
  private final ScrollPane scroll;

  /** Builds the pane. */
  public ProgressView(ProgressModel past, Look look, Listeners follow) {
    super(look.px(12));
    this.past = past;
    this.look = look;
    setId("progress");
    Label words = label("progress-words", "", "second");
    words.textProperty().bind(past.wordsProperty());
    charts = new VBox(look.px(16));
    scroll = new ScrollPane(charts);
    scroll.setId("progress-charts");
    scroll.setFitToWidth(true);
    scroll.setHbarPolicy(ScrollPane.ScrollBarPolicy.NEVER);
    scroll.setPrefViewportWidth(look.px(WIDTH));
    scroll.setPrefViewportHeight(look.px(MOST_HEIGHT));
    scroll.setMinHeight(look.px(120));
    scroll.visibleProperty().bind(past.scoreProperty().isNotNull());
    scroll.managedProperty().bind(scroll.visibleProperty());
    getChildren().setAll(words, scroll);
    follow.onChange(past.scoreProperty(), this::show);
    show();
  }

  private void show() {
    ProgressScore score = past.scoreProperty().get();
    List<Node> nodes = new ArrayList<>();
    for (String line : past.unreadProperty().get()) {
      nodes.add(label("", "Not followed: " + line, "over"));
    }
    if (!past.changesProperty().get().isEmpty()) {
      nodes.add(changes(past.changesProperty().get()));
    }
    if (score != null) {
      nodes.add(label("", CourseSentences.KEY, "small"));
      for (Quality quality : Quality.values()) {
        if (score.courses().stream().anyMatch(course -> course.quality() == quality)) {
          nodes.add(quality(score, quality));
        }
      }
    }
    charts.getChildren().setAll(nodes);
    if (score != null) {
      // From now on there is something that the arrow keys can scroll.
      scroll.requestFocus();
    }
  }

  private Node changes(List<String> lines) {
    VBox box = new VBox(look.px(4), Nodes.label("In this session", "strong"));
    lines.forEach(line -> box.getChildren().add(label("progress-change", line, "second")));
    box.getChildren().add(label("", AthleteProgress.PRACTICE, "small"));
    return box;
  }

  private Node quality(ProgressScore score, Quality quality) {
    Measure measure = Measures.headline(quality);
    String name = Phrases.capital(measure.name()) + ", " + measure.unit();
    VBox box = new VBox(look.px(4), Nodes.label(name, "strong"));
    for (Hand hand : List.of(Hand.LEFT, Hand.RIGHT)) {
      score
          .course(hand, quality)
          .ifPresent(
              course ->
                  box.getChildren()
                      .add(
                          label(
                              "progress-" + quality.code() + "-" + hand.code(),
                              CourseSentences.of(course),
                              "second")));
    }
    Limits limits = past.limits();
    Limit limit = limits == null ? null : limits.of(quality);
    Canvas canvas = look.canvas(WIDTH, ProgressChart.HEIGHT);
    ProgressChart.paint(
        new StripGraphics(canvas.getGraphicsContext2D()),
        new Rectangle2D.Double(0, 0, WIDTH - 16, ProgressChart.HEIGHT),
        score,
        quality,
        limit == null ? null : limit.value(),
        look.theme().palette());
    box.getChildren().add(canvas);
    return box;
  }

  private Label label(String id, String text, String style) {
    Label label = Nodes.named(id, style);
    label.setText(text);
    label.setWrapText(true);
    label.setMaxWidth(look.px(WIDTH));
    return label;
  }
}
