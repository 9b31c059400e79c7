package palmturn.app.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.TextField;
import javafx.scene.image.ImageView;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;
import palmturn.app.board.ImageCache;
import palmturn.app.look.Listeners;
import palmturn.app.look.Look;
import palmturn.app.look.Nodes;
import palmturn.app.session.Intake;
import palmturn.app.session.TrialCandidate;
import palmturn.app.tasks.RunningTask;
import palmturn.clip.Picture;
import palmturn.trial.Hand;
import palmturn.trial.Mirrored;
import palmturn.work.session.ClipSummary;

/** The form for clips before they are added, with stills from them. */
final class ClipsSheet {
  private static final double WIDTH = 780;
  private static final double STILL = 148;

  /** Width of what is asked beside the stills. */
  private static final double ASKS = 410;

  private final Intake intake;
  private final Look look;
  private final ImageCache pictures = new ImageCache();
  private final HBox stills;
  private final VBox rows;
  private final HBox progress;

  ClipsSheet(Intake intake, Look look) {
    this.intake = intake;
    this.look = look;
    stills = new HBox(look.px(8));
    rows = new VBox(look.px(8));
    progress = Nodes.row(look.px(12));
    progress.setMinHeight(look.px(34));
  }

  /** Returns the sheet's content, which follows the clips until the end. */
  List<Node> content(Listeners listeners) {
    List<Node> content = new ArrayList<>();
    if (intake.newSession()) {
      content.add(athleteFields());
    }
    content.add(handQuestions());
    ScrollPane scroll = new ScrollPane(rows);
    Nodes.scrollVertically(scroll);
    scroll.setPrefHeight(look.px(170));
    scroll.setMinHeight(look.px(80));
    scroll.setPrefWidth(look.px(WIDTH));
    content.add(scroll);
    content.add(progress);
    content.add(SheetFactory.obstacle("clips-missing", intake.obstacleProperty(), look.px(WIDTH)));
    listeners.onChange(intake.candidatesProperty(), this::show);
    listeners.onChange(intake.looksProperty(), this::show);
    listeners.onChange(intake.troublesProperty(), this::show);
    listeners.onChange(intake.firstHandProperty(), this::show);
    listeners.onValue(intake.runningProperty(), this::progress);
    show();
    return content;
  }

  private FlowPane athleteFields() {
    TextField athlete = SheetFactory.field("athlete", 10, look, intake.athleteProperty());
    TextField date = SheetFactory.field("date", 8, look, intake.dateProperty());
    HBox racket =
        RadioRow.of(
            "racket",
            look,
            intake.racketHandProperty(),
            RadioRow.option("left", Hand.LEFT, "left"),
            RadioRow.option("right", Hand.RIGHT, "right"));
    return new FlowPane(
        look.px(24),
        look.px(12),
        SheetFactory.labelled("Athlete's code, such as H-07; no name", athlete, look),
        SheetFactory.labelled("Day of filming", date, look),
        SheetFactory.labelled("Racket hand, if known", racket, look));
  }

  private ScrollPane handQuestions() {
    HBox hand =
        RadioRow.of(
            "hand",
            look,
            intake.firstHandProperty(),
            RadioRow.option("left", Hand.LEFT, "left hand"),
            RadioRow.option("right", Hand.RIGHT, "right hand"));
    HBox writing =
        RadioRow.of(
            "writing",
            look,
            intake.mirroredProperty(),
            RadioRow.option("plain", Mirrored.FALSE, "reads normally"),
            RadioRow.option("mirrored", Mirrored.TRUE, "is mirrored"),
            RadioRow.option("unknown", Mirrored.UNKNOWN, "none visible"));
    Label help =
        Nodes.wrapped(
            "Facing the camera, the athlete's right hand is at the left of the picture;"
                + " if writing is mirrored, at the right.",
            "small");
    help.setMaxWidth(look.px(WIDTH - 3 * STILL - 48));
    stills.setMinWidth(look.px(3 * STILL + 16));
    VBox asks =
        new VBox(
            look.px(12),
            SheetFactory.labelled("Which of the athlete's hands moves here?", hand, look),
            help,
            SheetFactory.labelled("Writing in the picture", writing, look),
            SheetFactory.labelled(
                "Click track in slaps/s; leave empty if there was none",
                SheetFactory.field("pace", 5, look, intake.paceProperty()),
                look));
    return SheetScrollPane.beside(3 * STILL + 16 + SheetScrollPane.GAP + ASKS, look, stills, asks);
  }

  private void show() {
    stills.getChildren().clear();
    rows.getChildren().clear();
    List<TrialCandidate> attempts = intake.candidatesProperty().get();
    var places = intake.places();
    for (int i = 0; i < attempts.size(); i++) {
      rows.getChildren().add(row(i, attempts.get(i), places.get(i) != null));
    }
    attempts.stream()
        .filter(TrialCandidate::included)
        .map(each -> intake.looksProperty().get().get(each.clip()))
        .filter(Objects::nonNull)
        .findFirst()
        .ifPresent(seen -> seen.stills().forEach(still -> stills.getChildren().add(still(still))));
  }

  private ImageView still(Picture picture) {
    ImageView view = new ImageView(pictures.of(picture));
    view.setPreserveRatio(true);
    view.setFitWidth(look.px(STILL));
    view.setFitHeight(look.px(STILL));
    view.setAccessibleText("a picture from the middle of the clip");
    return view;
  }

  private VBox row(int index, TrialCandidate attempt, boolean taken) {
    ClipSummary seen = intake.looksProperty().get().get(attempt.clip());
    Label name = Nodes.label(ClipWords.name(attempt, seen), "strong");
    Label facts = Nodes.label(ClipWords.facts(attempt, seen), "second");
    HBox line = Nodes.row(look.px(12), name, facts, Nodes.space());
    var place = intake.places().get(index);
    if (place != null) {
      Button swap =
          Nodes.button(
              "swap-" + index,
              place.hand().code() + " hand " + place.repeat(),
              () -> intake.setHand(index, place.hand().other()),
              "choice",
              "narrow");
      swap.setAccessibleText(swap.getText() + ", press to take the other hand");
      line.getChildren().add(swap);
    }
    line.getChildren()
        .add(
            Nodes.button(
                "take-" + index,
                taken ? "leave out" : "take in",
                () -> intake.include(index, !taken),
                "choice",
                "narrow"));
    VBox row = new VBox(look.px(2), line);
    for (String warning : ClipWords.warnings(attempt, seen, intake.troublesProperty().get())) {
      Label label = Nodes.label("▲ " + warning, "small");
      label.getStyleClass().add("warning");
      label.setWrapText(true);
      row.getChildren().add(label);
    }
    return row;
  }

  private void progress(@Nullable RunningTask now) {
    progress
        .getChildren()
        .setAll(now == null ? List.of() : Nodes.progress(now, "clips", look.px(180), intake::stop));
  }
}
