package palmturn.app;

import java.util.function.Consumer;
import javafx.beans.binding.Bindings;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.geometry.Pos;
import javafx.scene.canvas.Canvas;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.control.Label;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Region;
import javafx.scene.paint.Color;
import palmturn.app.desk.MessageWords;
import palmturn.app.desk.Messages;
import palmturn.app.desk.Review;
import palmturn.app.differences.DifferenceReview;
import palmturn.app.differences.ModeTabs;
import palmturn.app.differences.ReadingPair;
import palmturn.app.keys.Action;
import palmturn.app.keys.KeyBindings;
import palmturn.app.look.Listeners;
import palmturn.app.look.Look;
import palmturn.app.look.Nodes;
import palmturn.app.look.Theme;
import palmturn.app.look.Tooltips;
import palmturn.app.tasks.LongTask;

/** The header, 48 high: the session, the last step, the reading and the time it was saved. */
final class HeaderView extends HBox {
  /** The lines of the header; saved gives way to another word where the session is read-only. */
  record Lines(
      ReadOnlyStringProperty heading,
      ReadOnlyStringProperty step,
      ReadOnlyStringProperty reader,
      ReadOnlyStringProperty saved,
      ReadOnlyBooleanProperty readOnly) {}

  HeaderView(
      Lines lines,
      Review review,
      Messages news,
      LongTask writing,
      KeyBindings keys,
      Look look,
      Consumer<String> press,
      Listeners follow) {
    super(look.px(12));
    getStyleClass().setAll("header");
    setAlignment(Pos.CENTER_LEFT);
    Nodes.setHeight(this, look.px(48));
    Label name = Nodes.whole("Palmturn", "program");
    Label heading = label("heading", "second");
    heading.textProperty().bind(lines.heading());
    heading.setMinWidth(0);
    Label step = label("step", "step");
    step.textProperty().bind(lines.step());
    step.setMinWidth(0);
    DifferenceReview differences = review.differences();
    // The last step on the marks says nothing about the differences.
    step.visibleProperty().bind(differences.trialProperty().isNull());
    Label reader = label("reader", "plain");
    reader.setMinWidth(look.px(128));
    Nodes.bindText(
        reader,
        Bindings.createStringBinding(
            () -> {
              ReadingPair pair = differences.comparison().pairProperty().get();
              String who = differences.reviewerProperty().get();
              return pair == null
                  ? lines.reader().get()
                  : (who.isEmpty() ? "Settling " : who + " settles ") + pair.words();
            },
            differences.reviewerProperty(),
            differences.comparison().pairProperty(),
            lines.reader()));
    ModeTabs tabs = new ModeTabs(differences, review.offeredProperty(), keys, look, press, follow);
    Label saved = label("saved", "second");
    Nodes.bindText(
        saved, Bindings.when(lines.readOnly()).then("Read-only").otherwise(lines.saved()));
    Label messages = label("messages", "second");
    Nodes.bindText(
        messages,
        Bindings.createStringBinding(
            () -> MessageWords.count(news.allProperty().get().size(), news.unseenProperty().get()),
            news.allProperty(),
            news.unseenProperty()));
    messages.setTooltip(Tooltips.of("Messages: " + keys.of(Action.MESSAGES), look));
    messages.setOnMouseClicked(event -> press.accept(keys.of(Action.MESSAGES)));
    messages.getStyleClass().add("to-click");
    follow.onValue(
        news.unseenProperty(), unseen -> Nodes.setStyle(messages, "name", unseen.intValue() > 0));
    Label written = label("written", "plain");
    written.textProperty().bind(Bindings.concat(writing.wordsProperty(), "; Esc stops"));
    written.managedProperty().bind(writing.runningProperty());
    written.visibleProperty().bind(writing.runningProperty());
    getChildren()
        .setAll(
            sign(look),
            name,
            gap(look, 16),
            heading,
            gap(look, 36),
            tabs,
            gap(look, 24),
            step,
            Nodes.space(),
            written,
            messages,
            reader,
            saved);
  }

  private static Label label(String id, String style) {
    Label label = Nodes.whole("", style);
    label.setId(id);
    return label;
  }

  private static Canvas sign(Look look) {
    Canvas canvas = look.canvas(26, 28);
    GraphicsContext g = canvas.getGraphicsContext2D();
    Color ink = Theme.fx(look.theme().palette().ink());
    g.setFill(ink);
    g.setStroke(ink);
    g.setLineWidth(2);
    g.strokeLine(1, 14, 25, 14);
    g.strokeLine(8.5, 14, 8.5, 5);
    g.strokeLine(17.5, 14, 17.5, 23);
    g.fillOval(4.5, 1, 8, 8);
    g.fillRect(13.5, 19, 8, 8);
    return canvas;
  }

  private static Region gap(Look look, double width) {
    Region gap = new Region();
    gap.setMinWidth(look.px(width) - look.px(12));
    return gap;
  }
}
