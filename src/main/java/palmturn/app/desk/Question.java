package palmturn.app.desk;

import java.util.List;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import palmturn.trial.Estimate;

/** Something that the person in front of the window is asked, or shown until closed. */
public sealed interface Question {
  /** The use of keys while a question is over the window; Escape closes every one. */
  enum KeyUse {
    /** The sheet has fields or lists, which take all keys. */
    SHEET,
    /** The sheet has only choices: any key but Enter closes it, and does what it does elsewhere. */
    WINDOW,
    /** The sheet of all keys, where the next key may become an action's. */
    KEY_SHEET
  }

  /**
   * An answer for each sort of question.
   *
   * @param <T> the answer
   */
  interface Visitor<T> {
    /** Visits a line to be typed. */
    T line(Line question);

    /** Visits the question who reads a session. */
    T reader(Reader question);

    /** Visits clips to be added. */
    T clips(Clips question);

    /** Visits the details of an estimate. */
    T estimate(EstimateDetails question);

    /** Visits a step that wants consent. */
    T consent(Consent question);

    /** Visits one of the standing sheets. */
    T page(Page question);
  }

  /** Returns the visitor's answer for this sort of question. */
  <T> T accept(Visitor<T> visitor);

  /** Returns the use of keys while this question is over the window. */
  default KeyUse keyUse() {
    return KeyUse.SHEET;
  }

  /** Runs when the question goes away, answered or not. */
  default void closed() {}

  /** A standing sheet, always about the open session or the program. */
  enum Page implements Question {
    /** The known facts about the athlete. */
    ATHLETE(KeyUse.SHEET),
    /** The drill that was done, to begin the block after it. */
    NEW_DRILL(KeyUse.SHEET),
    /** The marks that have no key in the row. */
    MORE_MARKS(KeyUse.WINDOW),
    /** The messages between athlete and coach, with room for another one. */
    MESSAGES(KeyUse.SHEET),
    /** The athlete's progress over sessions. */
    PROGRESS(KeyUse.SHEET),
    /** The paces of extra trials to a click track. */
    LADDER(KeyUse.WINDOW),
    /** All keys. */
    ALL_KEYS(KeyUse.KEY_SHEET);

    private final KeyUse keyUse;

    Page(KeyUse keyUse) {
      this.keyUse = keyUse;
    }

    @Override
    public <T> T accept(Visitor<T> visitor) {
      return visitor.page(this);
    }

    @Override
    public KeyUse keyUse() {
      return keyUse;
    }
  }

  /**
   * A line of words to be typed.
   *
   * @param id of its field
   * @param about the reason for asking, a line each
   * @param before text that stands there already
   * @param columns width of the field, characters
   * @param done the word on the choice that hands the words over
   * @param then gets the words, never blank
   */
  record Line(
      String id,
      String title,
      List<String> about,
      String before,
      int columns,
      String done,
      Consumer<String> then)
      implements Question {
    /** Returns the question for the initials of the person who is marking. */
    public static Line initials(Consumer<String> then) {
      return new Line(
          "initials",
          "Who is reading?",
          List.of("Your initials keep your marks apart from a second reader’s.", "Your initials"),
          "",
          8,
          "Begin marking",
          then);
    }

    @Override
    public <T> T accept(Visitor<T> visitor) {
      return visitor.line(this);
    }
  }

  /**
   * The reader of a session that somebody has read in, asked before any of it is shown.
   *
   * @param guess who it may be; empty where that is not known
   * @param then gets the initials; null from somebody who only views
   * @param whenClosed runs when the question goes away
   */
  record Reader(String guess, Consumer<@Nullable String> then, Runnable whenClosed)
      implements Question {
    @Override
    public <T> T accept(Visitor<T> visitor) {
      return visitor.reader(this);
    }

    @Override
    public void closed() {
      whenClosed.run();
    }
  }

  /**
   * The moving hands in clips that are to be added, and the athlete.
   *
   * @param whenClosed runs when the question goes away
   */
  record Clips(Runnable whenClosed) implements Question {
    @Override
    public <T> T accept(Visitor<T> visitor) {
      return visitor.clips(this);
    }

    @Override
    public void closed() {
      whenClosed.run();
    }
  }

  /** The details of the visible estimate, to be read. */
  record EstimateDetails(Estimate estimate) implements Question {
    @Override
    public <T> T accept(Visitor<T> visitor) {
      return visitor.estimate(this);
    }
  }

  /**
   * Consent to a step.
   *
   * @param about the step and its outcome
   * @param refuse the word on the choice that leaves all as it is
   * @param done the word on the choice that consents
   * @param then runs on consent
   */
  record Consent(String title, String about, String refuse, String done, Runnable then)
      implements Question {
    @Override
    public <T> T accept(Visitor<T> visitor) {
      return visitor.consent(this);
    }

    @Override
    public KeyUse keyUse() {
      return KeyUse.WINDOW;
    }
  }
}
