package palmturn.app.sheet;

import java.util.List;
import java.util.Locale;
import javafx.beans.property.StringProperty;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;
import palmturn.advise.Caution;
import palmturn.app.look.Listeners;
import palmturn.app.look.Look;
import palmturn.app.look.Nodes;
import palmturn.app.session.AthleteForm;
import palmturn.trial.BodyLength;
import palmturn.trial.Hand;

/** The form of the athlete's details. */
final class AthleteSheet {
  private static final double COLUMN = 336;
  private static final double GAP = 32;
  private static final double FIELD = 88;

  private final AthleteForm athlete;
  private final String heading;
  private final boolean readOnly;
  private final Look look;
  private @Nullable TextField first;

  /**
   * Builds nothing yet.
   *
   * @param heading whose session, of which day
   */
  AthleteSheet(AthleteForm athlete, String heading, boolean readOnly, Look look) {
    this.athlete = athlete;
    this.heading = heading;
    this.readOnly = readOnly;
    this.look = look;
  }

  /** Returns what takes the keys first; null for the sheet itself. */
  @Nullable TextField first() {
    return first;
  }

  /** Returns the sheet's content, which follows what is said until the end. */
  List<Node> content(Listeners listeners) {
    VBox left =
        column(
            length("Forearm", "bent elbow to wrist crease", BodyLength.FOREARM, listeners),
            length(
                "Hand, held flat", "wrist crease to middle fingertip", BodyLength.HAND, listeners),
            length(
                "Standing height", "without shoes, against a wall", BodyLength.STATURE, listeners),
            scale(),
            labelled("Racket hand", racketHand()));
    VBox right =
        column(
            labelled("Pain or injury on the day, in the athlete’s words", pain()),
            labelled("A guardian’s consent, where the athlete is young", consent()),
            labelled("Camera", wide("athlete-camera", athlete.cameraProperty())),
            labelled("Club", wide("athlete-club", athlete.clubProperty())));
    HBox both = new HBox(look.px(GAP), left, right);
    double width = look.px(2 * COLUMN + GAP);
    Label line =
        readOnly
            ? Nodes.wrapped(Sheets.READ_ONLY, "second")
            : SheetFactory.obstacle("athlete-missing", athlete.obstacleProperty(), width);
    Label whose = Nodes.label(heading, "second");
    whose.setId("athlete-whose");
    return List.of(whose, new SheetScrollPane(both, 2 * COLUMN + GAP, look), line);
  }

  private VBox column(Node... rows) {
    VBox column = new VBox(look.px(14), rows);
    column.setMinWidth(0);
    column.setPrefWidth(look.px(COLUMN));
    HBox.setHgrow(column, Priority.ALWAYS);
    return column;
  }

  /** Returns a length's field, with how to measure it, or its error, beside it. */
  private VBox length(String name, String how, BodyLength what, Listeners listeners) {
    StringProperty typed = athlete.lengthProperty(what);
    if (readOnly) {
      return labelled(name, valueText(typed.get().isEmpty() ? "" : typed.get() + " cm"));
    }
    String id = "athlete-" + what.name().toLowerCase(Locale.ROOT);
    TextField field = SheetFactory.field(id, 4, look, typed);
    field.setMinWidth(look.px(FIELD));
    field.setMaxWidth(look.px(FIELD));
    field.setAccessibleText(name + ", cm: " + how);
    first = first == null ? field : first;
    Label beside = Nodes.named(id + "-beside", "small");
    listeners.onValue(
        athlete.faultProperty(what),
        wrong -> {
          Nodes.setStyle(beside, "warning", !wrong.isEmpty());
          beside.setText(wrong.isEmpty() ? how : "▲ " + wrong);
        });
    return labelled(name, Nodes.row(look.px(8), field, Nodes.whole("cm", "second"), beside));
  }

  /** Explains the use of the lengths or, after a change, that old estimates keep their scale. */
  private Label scale() {
    Label scale = Nodes.wrapped("", "small");
    scale.setId("athlete-scale");
    scale
        .textProperty()
        .bind(
            athlete
                .oldScaleProperty()
                .map(
                    old ->
                        old.isEmpty()
                            ? "They give the elbow’s displacement in centimetres. One is"
                                + " enough: the forearm is best, the height last."
                            : old));

    scale.setMinHeight(look.px(36));
    scale.setAlignment(Pos.TOP_LEFT);
    return scale;
  }

  private Node racketHand() {
    Hand said = athlete.racketHandProperty().get();
    return readOnly
        ? valueText(said == null ? "" : said.code())
        : RadioRow.of(
            "athlete-racket",
            look,
            athlete.racketHandProperty(),
            RadioRow.option("left", Hand.LEFT, "left"),
            RadioRow.option("right", Hand.RIGHT, "right"),
            RadioRow.option("unsaid", null, "not said"));
  }

  private Node pain() {
    Node pain = wide("athlete-pain", athlete.painProperty());
    if (pain instanceof TextField field) {
      field.setPromptText("leave empty if none");
    }
    return new VBox(look.px(4), pain, Nodes.wrapped(Caution.PAIN.text(), "small"));
  }

  private Node consent() {
    Boolean said = athlete.consentProperty().get();
    Node consent =
        readOnly
            ? valueText(said == null ? "" : said ? "yes" : "no")
            : RadioRow.of(
                "athlete-consent",
                look,
                athlete.consentProperty(),
                RadioRow.option("yes", Boolean.TRUE, "yes"),
                RadioRow.option("no", Boolean.FALSE, "no"),
                RadioRow.option("unsaid", null, "not said"));
    return new VBox(look.px(4), consent, Nodes.wrapped(Caution.FILMING.text(), "small"));
  }

  private Node wide(String id, StringProperty typed) {
    if (readOnly) {
      return valueText(typed.get());
    }
    TextField field = SheetFactory.field(id, 20, look, typed);
    field.setMaxWidth(Double.MAX_VALUE);
    return field;
  }

  private static Label valueText(String words) {
    return Nodes.wrapped(words.isBlank() ? "not said" : words, "plain");
  }

  private VBox labelled(String question, Node answer) {
    return new VBox(look.px(4), Nodes.label(question, "name"), answer);
  }
}
