package palmturn.app;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.function.Consumer;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.OverrunStyle;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import palmturn.app.hints.KeyCaps;
import palmturn.app.keys.Action;
import palmturn.app.keys.KeyMap;
import palmturn.app.look.Look;
import palmturn.app.look.Nodes;
import palmturn.app.look.Tooltips;
import palmturn.app.session.SessionFlow;
import palmturn.settings.RecentSessions;
import palmturn.trial.TrialId;

/** The advice on filming, and the ways to begin, in the tally's place before anything is filmed. */
final class StartPane extends VBox {
  /** With more sessions than this there is no room for how to film. */
  private static final int FEW = 2;

  private static final String[][] HOW = {
    {"Camera still, level with the hands", "about 1.5 m in front"},
    {"60 frames a second or more", "30 works, with less detail"},
    {"Light from the front, sound on", "the clicks time the rhythm"},
    {"Slap as fast as stays accurate", "five seconds, three times a hand"},
    {"The face may stay out", "clips stay on this computer"},
  };

  StartPane(boolean sessionOpen, SessionFlow flow, KeyMap keys, Look look, Consumer<String> press) {
    super(look.px(10));
    getStyleClass().setAll("pane", "start");
    List<RecentSessions.Entry> last = sessionOpen ? List.of() : flow.recentsProperty().get();
    String heading = sessionOpen ? "Not filmed yet" : "Nothing filmed yet";
    HBox head = new HBox(Nodes.label(last.isEmpty() ? heading : "Last sessions", "title"));
    head.getStyleClass().add("title-row");
    getChildren().add(head);
    if (last.isEmpty()) {
      how(look, true);
    } else {
      recents(last, flow, look);
    }
    Region space = new Region();
    VBox.setVgrow(space, Priority.ALWAYS);
    getChildren().add(space);
    getChildren()
        .add(button("start-add", "Add clips", keys.of(Action.ADD), "main-choice", look, press));
    if (!sessionOpen) {
      getChildren()
          .addAll(
              button("start-open", "Open a session", keys.of(Action.OPEN), "choice", look, press),
              button("start-inbox", "Inbox", keys.of(Action.INBOX_SHOW), "choice", look, press));
    }
    getChildren().add(Nodes.label("or drop clips or a session folder anywhere", "small"));
    if (!last.isEmpty() && last.size() <= FEW) {
      how(look, false);
    }
  }

  private void how(Look look, boolean full) {
    for (int i = 0; i < HOW.length; i++) {
      Label number = Nodes.label(Integer.toString(i + 1), "strong");
      number.setMinWidth(look.px(14));
      VBox words = new VBox(new Label(HOW[i][0]));
      if (full) {
        words.getChildren().add(Nodes.label(HOW[i][1], "second"));
      } else {
        number.getStyleClass().setAll("label", "small");
        words.getChildren().forEach(each -> each.getStyleClass().setAll("label", "small"));
      }
      getChildren().add(new HBox(look.px(8), number, words));
    }
  }

  /** The last sessions, so that an evening's work goes on where it was left. */
  private void recents(List<RecentSessions.Entry> all, SessionFlow flow, Look look) {
    VBox list = new VBox(look.px(2));
    for (int i = 0; i < all.size(); i++) {
      RecentSessions.Entry each = all.get(i);
      Label where = Nodes.label(where(each), "small");
      where.setTextOverrun(OverrunStyle.LEADING_ELLIPSIS);
      Button button = Nodes.button("recent-" + i, "", () -> flow.open(each), "line-choice");
      button.setAccessibleText(each.heading() + ", " + where(each));
      button.setGraphic(
          Nodes.row(
              look.px(8),
              KeyCaps.cap(Integer.toString(i + 1), look),
              new VBox(new Label(each.heading()), where)));
      button.setMaxWidth(Double.MAX_VALUE);
      button.setTooltip(Tooltips.of(each.folder().toString(), look));
      list.getChildren().add(button);
    }
    getChildren().add(list);
  }

  /** Sessions of one athlete and day are told apart by their folders. */
  private static String where(RecentSessions.Entry left) {
    Path folder = left.folder();
    int names = folder.getNameCount();
    String last = folder.subpath(Math.max(0, names - 2), names).toString();
    TrialId trial = left.trial();
    return trial == null
        ? last
        : String.format(
            Locale.ROOT, "%s, at %s hand %d", last, trial.hand().code(), trial.repeat());
  }

  private static Button button(
      String id, String words, String key, String style, Look look, Consumer<String> press) {
    HBox content = Nodes.row(0, Nodes.label(words, "big"), Nodes.space(), KeyCaps.cap(key, look));
    content.setMinWidth(look.px(210));
    Button button = Nodes.button(id, "", () -> press.accept(key), style);
    button.setGraphic(content);
    button.setMaxWidth(Double.MAX_VALUE);
    button.setMinHeight(look.px(44));
    return button;
  }
}
