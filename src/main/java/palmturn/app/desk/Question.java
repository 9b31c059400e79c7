package palmturn.app.desk;

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
    /** Visits the question whose marks follow. */
    T initials(Initials question);

    /** Visits the question who reads a session. */
    T reader(Reader question);

    /** Visits clips to be added. */
    T clips(Clips question);

    /** Visits facts about the athlete. */
    T athlete(Athlete question);

    /** Visits the summary of an estimate. */
    T estimateSummary(EstimateSummary question);

    /** Visits the next drill. */
    T newDrill(NewDrill question);

    /** Visits a line of words. */
    T line(Line question);

    /** Visits a slap's note. */
    T note(Note question);

    /** Visits marks to be replaced. */
    T replace(Replace question);

    /** Visits marks that another program's change keeps from being saved. */
    T unsaved(Unsaved question);

    /** Visits the rarer marks. */
    T more(More question);

    /** Visits messages. */
    T messages(MessageList question);

    /** Visits the athlete's progress. */
    T progress(Progress question);

    /** Visits the pace ladder. */
    T ladder(Ladder question);

    /** Visits all keys. */
    T keys(AllKeys question);
  }

  /** Returns the visitor's answer for this sort of question. */
  <T> T accept(Visitor<T> visitor);

  /** Returns the use of keys while this question is over the window. */
  default KeyUse keyUse() {
    return KeyUse.SHEET;
  }

  /** Runs when the question goes away, answered or not. */
  default void closed() {}

  /**
   * The initials of the person who is marking; asked once, when marking begins.
   *
   * @param then gets them
   */
  record Initials(Consumer<String> then) implements Question {
    @Override
    public <T> T accept(Visitor<T> visitor) {
      return visitor.initials(this);
    }
  }

  /**
   * The reader of a session that somebody has read in, asked before any of it is shown.
   *
   * @param guess who it may be; empty where that is not known
   * @param then gets the initials; null from somebody who only looks
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

  /** The known facts about the athlete. */
  record Athlete() implements Question {
    @Override
    public <T> T accept(Visitor<T> visitor) {
      return visitor.athlete(this);
    }
  }

  /** The summary of the visible estimate, to be read. */
  record EstimateSummary(Estimate estimate) implements Question {
    @Override
    public <T> T accept(Visitor<T> visitor) {
      return visitor.estimateSummary(this);
    }
  }

  /** The drill that was done, to begin the block after it. */
  record NewDrill() implements Question {
    @Override
    public <T> T accept(Visitor<T> visitor) {
      return visitor.newDrill(this);
    }
  }

  /**
   * A line of words.
   *
   * @param about the reason for asking
   * @param before text that stands there already
   * @param columns width of the field, characters
   * @param done the word on the choice that hands them over
   */
  record Line(
      String title, String about, String before, int columns, String done, Consumer<String> then)
      implements Question {
    @Override
    public <T> T accept(Visitor<T> visitor) {
      return visitor.line(this);
    }
  }

  /**
   * The fault of the current mark, in words.
   *
   * @param then gets them
   */
  record Note(Consumer<String> then) implements Question {
    @Override
    public <T> T accept(Visitor<T> visitor) {
      return visitor.note(this);
    }
  }

  /**
   * Consent to let the estimate's marks replace the reader's own.
   *
   * @param marks number of the reader's own
   * @param then runs on consent
   */
  record Replace(int marks, Runnable then) implements Question {
    @Override
    public <T> T accept(Visitor<T> visitor) {
      return visitor.replace(this);
    }

    @Override
    public KeyUse keyUse() {
      return KeyUse.WINDOW;
    }
  }

  /**
   * Consent to save marks as a new reading, where another program changed the session.
   *
   * @param marks number of marks that are not saved
   * @param then runs on consent
   */
  record Unsaved(int marks, Runnable then) implements Question {
    @Override
    public <T> T accept(Visitor<T> visitor) {
      return visitor.unsaved(this);
    }

    @Override
    public KeyUse keyUse() {
      return KeyUse.WINDOW;
    }
  }

  /** The marks that have no key in the row. */
  record More() implements Question {
    @Override
    public <T> T accept(Visitor<T> visitor) {
      return visitor.more(this);
    }

    @Override
    public KeyUse keyUse() {
      return KeyUse.WINDOW;
    }
  }

  /** The messages between athlete and coach, with room for another one. */
  record MessageList() implements Question {
    @Override
    public <T> T accept(Visitor<T> visitor) {
      return visitor.messages(this);
    }
  }

  /** The athlete's progress over sessions. */
  record Progress() implements Question {
    @Override
    public <T> T accept(Visitor<T> visitor) {
      return visitor.progress(this);
    }
  }

  /** The paces of extra trials to a click track. */
  record Ladder() implements Question {
    @Override
    public <T> T accept(Visitor<T> visitor) {
      return visitor.ladder(this);
    }

    @Override
    public KeyUse keyUse() {
      return KeyUse.WINDOW;
    }
  }

  /** All keys. */
  record AllKeys() implements Question {
    @Override
    public <T> T accept(Visitor<T> visitor) {
      return visitor.keys(this);
    }

    @Override
    public KeyUse keyUse() {
      return KeyUse.KEY_SHEET;
    }
  }
}
