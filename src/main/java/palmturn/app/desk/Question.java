package palmturn.app.desk;

import java.util.function.Consumer;
import palmturn.trial.Estimate;

/** Something that the person in front of the window is asked, or shown until closed. */
public sealed interface Question {
  /** Who is marking; asked once, when marking begins. */
  record Initials(Runnable then) implements Question {}

  /**
   * Who reads a session that somebody has read in, before any of it is shown.
   *
   * @param guess who it may be; empty where that is not known
   */
  record WhoReads(String guess) implements Question {}

  /** Which hand moves in clips that are to be added, and whose clips they are. */
  record Clips() implements Question {}

  /** What is known of the athlete. */
  record Athlete() implements Question {}

  /** What the estimate in sight says, to be read. */
  record EstimateSays(Estimate estimate) implements Question {}

  /** Which drill was done, to begin the block after it. */
  record NewDrill() implements Question {}

  /**
   * A line of words.
   *
   * @param about why it is asked
   * @param before what stands there already
   * @param columns how long the words may well be
   * @param done the word on the choice that hands them over
   */
  record Line(
      String title, String about, String before, int columns, String done, Consumer<String> then)
      implements Question {}

  /** What is wrong with the current mark, in words. */
  record Note() implements Question {}

  /**
   * Whether the estimate's marks may take the place of the reader's own.
   *
   * @param marks how many there are
   */
  record Replace(int marks, Runnable then) implements Question {}

  /** The marks that have no key in the row. */
  record More() implements Question {}

  /** What athlete and coach say to each other, and what there is to add. */
  record Messages() implements Question {}

  /** The athlete's progress over sessions. */
  record Progress() implements Question {}

  /** The paces of extra trials to a click track. */
  record Ladder() implements Question {}

  /** All keys. */
  record Keys() implements Question {}
}
