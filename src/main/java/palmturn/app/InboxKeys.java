package palmturn.app;

import java.util.List;
import palmturn.app.hints.KeyHint;
import palmturn.app.hints.KeyHints;
import palmturn.app.inbox.Inbox;
import palmturn.app.keys.Action;
import palmturn.app.keys.Where;

/** The keys of the inbox. */
final class InboxKeys {
  private static final int PAGE = 10;
  private static final int FAR = 1_000_000;

  private final Inbox inbox;

  /**
   * Binds the keys.
   *
   * @param chooseFolder lets the person choose the folder to search
   */
  InboxKeys(Inbox inbox, Runnable chooseFolder, Commands commands) {
    this.inbox = inbox;
    commands.bind(Where.INBOX, Action.INBOX_SHOW, inbox::hide);
    commands.bind(Action.INBOX_LEAVE, inbox::hide);
    commands.bind(Action.INBOX_SHOW, inbox::show);
    commands.bind(Action.INBOX_MOVE, this::move);
    commands.bind(Action.INBOX_FAR, this::move);
    commands.bind(Action.INBOX_OPEN, inbox::open);
    commands.bind(Action.INBOX_FOLDER, chooseFolder);
    commands.bind(Action.INBOX_AGAIN, inbox::search);
    commands.bind(Action.INBOX_STOP, inbox::stop);
  }

  /** Returns the keys that are valid in it. */
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
