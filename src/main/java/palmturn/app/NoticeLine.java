package palmturn.app;

import javafx.geometry.Pos;
import javafx.scene.control.Label;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Region;
import javafx.scene.layout.StackPane;
import palmturn.app.desk.Notice;
import palmturn.app.desk.Notices;
import palmturn.app.look.Listeners;
import palmturn.app.look.Look;
import palmturn.app.look.Nodes;
import palmturn.app.look.Sentence;

/** The notice at the top of the window; a click or Escape takes it away. */
final class NoticeLine extends HBox {
  NoticeLine(Notices notices, Look look, Listeners follow) {
    super(look.px(12));
    Label words = Nodes.named("notice", "notice-words");
    getChildren().setAll(words, Nodes.whole("Esc", "key"));
    setAlignment(Pos.CENTER_LEFT);
    setMaxSize(Region.USE_PREF_SIZE, Region.USE_PREF_SIZE);
    setOnMouseClicked(event -> notices.clear());
    translateYProperty().set(look.px(56));
    StackPane.setAlignment(this, Pos.TOP_CENTER);
    follow.onValue(
        notices.currentProperty(),
        now -> {
          words.setText(Sentence.of(now.text()));
          getStyleClass().setAll("notice");
          Nodes.setStyle(this, "notice-done", now.kind() == Notice.Kind.DONE);
          setVisible(!now.isEmpty());
        });
  }
}
