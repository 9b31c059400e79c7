package palmturn.app.keys;

import java.util.List;

/** A context in which keys are pressed. */
public enum Where {
  /** Anywhere, unless something takes all keys to itself. */
  WINDOW(false),
  /** No session is open. */
  START(false),
  /** The board has the focus. */
  BOARD(false),
  /** A filmed trial is on the stage. */
  TRIAL(false),
  /** The picture has the focus. */
  PICTURE(false),
  /** Keys are typed along. */
  TYPING(false),
  /** Marks are gone through one by one; takes all keys. */
  PASS(true),
  /** Places are set in the picture; takes all keys. */
  PLACES(true),
  /** Differences of two readings are gone through; takes all keys. */
  DIFFERENCES(true),
  /** One of them is marked afresh; takes all keys. */
  NEW_MARK(true),
  /** Two trials are looked at side by side; takes all keys. */
  PAIR(true),
  /** The inbox is in sight; takes all keys. */
  INBOX(true);

  /** The contexts in which the window's look can be changed. */
  static final List<Where> LOOK = List.of(WINDOW, PASS, DIFFERENCES, NEW_MARK, PAIR);

  private final boolean exclusive;

  Where(boolean alone) {
    this.exclusive = alone;
  }

  /** Returns whether one key can't have two meanings, one in this context and one in the other. */
  boolean overlaps(Where there) {
    return this == there
        || this == WINDOW && !there.exclusive
        || there == WINDOW && !exclusive
        || this == TRIAL && there == TYPING
        || this == TYPING && there == TRIAL;
  }
}
