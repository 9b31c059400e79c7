package palmturn.estimate.shape;

/** Takes what was seen in a frame to where the first frame's background is, in its pixels. */
@FunctionalInterface
public interface Stage {
  /** Returns the marks on the stage. */
  HandMarks of(HandMarks inPicture);
}
