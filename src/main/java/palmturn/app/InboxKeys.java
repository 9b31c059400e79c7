package palmturn.app;

import java.util.List;
import palmturn.app.hints.KeyHint;
import palmturn.app.hints.KeyHints;
import palmturn.app.inbox.Inbox;
import palmturn.app.keys.Action;
import palmturn.app.keys.Where;

/** What keys do while the inbox is in sight. */
final class InboxKeys {
  private static final int PAGE = 10;
  private static final int FAR = 1_000_000;

  private final Inbox inbox;

  /**
   * Sets them up.
   *
   * @param chooseFolder asks for the folder to search
   */
  InboxKeys(Inbox inbox, Runnable chooseFolder, Commands does) {
    this.inbox = inbox;
    does.bind(Where.INBOX, Action.INBOX_SHOW, inbox::hide);
    does.bind(Action.INBOX_LEAVE, inbox::hide);
    does.bind(Action.INBOX_SHOW, inbox::show);
    does.bind(Action.INBOX_MOVE, this::move);
    does.bind(Action.INBOX_FAR, this::move);
    does.bind(Action.INBOX_OPEN, inbox::open);
    does.bind(Action.INBOX_FOLDER, chooseFolder);
    does.bind(Action.INBOX_AGAIN, inbox::search);
    does.bind(Action.INBOX_STOP, inbox::stop);
  }

  boolean shown() {
    return inbox.shownProperty().get();
  }

  /** Returns the keys that are valid while it is. */
  List<KeyHint> hints() {
    boolean any = !inbox.foundProperty().get().isEmpty();
    return KeyHints.inbox(any, inbox.searchProperty().get() != null);
  }

  private void move(String key) {
    inbox.move(
        switch (key) {
          case "↑" -> -1;
          case "↓" -> 1;
          case "PgUp" -> -PAGE;
          case "PgDn" -> PAGE;
          case "Home" -> -FAR;
          default -> FAR;
        });
  }
}
