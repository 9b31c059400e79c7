package palmturn.estimate.hands;

/**
 * A body's landmarks, of which the arms' are used, and their visibility.
 *
 * @param x to the right of the picture, pixels
 * @param y downwards, pixels
 * @param visibility 0 to 1, that the landmark is in the picture and not occluded
 * @param presence 0 to 1, that there is a body
 */
@SuppressWarnings("ArrayRecordComponent") // Made once and only read.
record BodyMarks(double[] x, double[] y, double[] visibility, double presence) {
  /** Number of landmarks of a body. */
  static final int SIZE = 33;

  /** Numbers of the elbows in the network's list of landmarks. */
  static final int LEFT_ELBOW = 13;

  static final int RIGHT_ELBOW = 14;

  /** Returns the number of an elbow's landmark. */
  static int elbow(boolean right) {
    return right ? RIGHT_ELBOW : LEFT_ELBOW;
  }

  /** Returns the landmarks on the stage. */
  BodyMarks on(Registration stage) {
    double[] newX = new double[SIZE];
    double[] newY = new double[SIZE];
    for (int i = 0; i < SIZE; i++) {
      newX[i] = stage.x(x[i], y[i]);
      newY[i] = stage.y(x[i], y[i]);
    }
    return new BodyMarks(newX, newY, visibility, presence);
  }
}
