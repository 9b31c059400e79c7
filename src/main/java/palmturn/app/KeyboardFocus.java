package palmturn.app;

import java.util.ArrayList;
import java.util.List;
import java.util.function.BooleanSupplier;
import palmturn.app.desk.OpenSession;
import palmturn.app.desk.Review;
import palmturn.app.differences.DifferenceReview;
import palmturn.app.hints.KeyHints;
import palmturn.app.inbox.Inbox;
import palmturn.app.keys.Where;
import palmturn.app.marking.Marking;
import palmturn.app.pair.TrialPair;
import palmturn.app.stage.PlaceEditor;
import palmturn.app.stage.Stage;
import palmturn.trial.Reading;

/**
 * The places that the keyboard acts on just now.
 *
 * @param boardFocused returns whether the board has the focus
 * @param stageFocused returns whether the picture has the focus
 */
record KeyboardFocus(
    OpenSession session,
    Stage stage,
    Marking marking,
    Modes modes,
    BooleanSupplier boardFocused,
    BooleanSupplier stageFocused) {
  /** The modes in which keys mean something of their own. */
  record Modes(Inbox inbox, TrialPair pair, Review review, PlaceEditor placing, FastKeys fast) {}

  /** Returns the places whose keys count, the one that takes a key first at the head. */
  List<Where> places() {
    if (inInbox()) {
      return List.of(Where.INBOX, Where.WINDOW);
    }
    if (inPair()) {
      return List.of(Where.PAIR);
    }
    if (inDifferences()) {
      return List.of(markingAfresh() ? Where.NEW_MARK : Where.DIFFERENCES);
    }
    if (placing()) {
      return List.of(Where.PLACES);
    }
    if (modes.fast().passing()) {
      return List.of(Where.PASS);
    }
    List<Where> places = new ArrayList<>();
    boolean filmed = stage.framesProperty().get() != null;
    add(places, Where.TYPING, modes.fast().typing());
    add(places, Where.BOARD, boardFocused.getAsBoolean());
    add(places, Where.PICTURE, filmed && stageFocused.getAsBoolean());
    add(places, Where.TRIAL, filmed);
    add(places, Where.START, session.folder() == null);
    add(places, Where.WINDOW, true);
    return places;
  }

  private static void add(List<Where> to, Where where, boolean holds) {
    if (holds) {
      to.add(where);
    }
  }

  /** Returns the place for the row of hints. */
  KeyHints.Context hintsPlace() {
    if (session.folder() == null) {
      return KeyHints.Context.NOTHING_OPEN;
    }
    if (boardFocused.getAsBoolean()) {
      return KeyHints.Context.BOARD;
    }
    if (stage.framesProperty().get() == null) {
      return KeyHints.Context.NOT_FILMED;
    }
    if (placing()) {
      return KeyHints.Context.PLACES;
    }
    if (session.readOnly()) {
      return KeyHints.Context.READ_ONLY;
    }
    Reading reading = marking.readingProperty().get();
    return reading != null && reading.finished()
        ? KeyHints.Context.FINISHED
        : KeyHints.Context.TRIAL;
  }

  /** Returns whether the inbox is shown. */
  boolean inInbox() {
    return modes.inbox().shownProperty().get();
  }

  /** Returns whether two trials are side by side. */
  boolean inPair() {
    return modes.pair().activeProperty().get();
  }

  /** Returns whether differences are gone through. */
  boolean inDifferences() {
    return differences().isOpen();
  }

  /** Returns whether a difference is being marked afresh. */
  boolean markingAfresh() {
    return differences().newMark().activeProperty().get();
  }

  private boolean placing() {
    return modes.placing().activeProperty().get();
  }

  private DifferenceReview differences() {
    return modes.review().differences();
  }
}
