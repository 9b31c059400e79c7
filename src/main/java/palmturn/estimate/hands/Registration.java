package palmturn.estimate.hands;

/**
 * The transform from a frame to the stage, the first frame's background, in full-size pixels: (x,
 * y) to (a·x − b·y + dx, b·x + a·y + dy).
 *
 * @param a size × cosine of the turn
 * @param b size × sine of the turn
 * @param dx shift to the right, pixels
 * @param dy shift down, pixels
 */
record Registration(double a, double b, double dx, double dy) {
  /** Returns the x on the stage of a place of the frame. */
  double x(double x, double y) {
    return a * x - b * y + dx;
  }

  /** Returns the y on the stage of a place of the frame. */
  double y(double x, double y) {
    return b * x + a * y + dy;
  }

  /** Returns a hand of the frame on the stage. */
  HandMarks of(HandMarks hand) {
    double[] newX = new double[HandMarks.SIZE];
    double[] newY = new double[HandMarks.SIZE];
    for (int i = 0; i < HandMarks.SIZE; i++) {
      newX[i] = x(hand.x()[i], hand.y()[i]);
      newY[i] = y(hand.x()[i], hand.y()[i]);
    }
    return new HandMarks(newX, newY, hand.presence());
  }

  /** Returns a hand on the stage in the frame. */
  HandMarks back(HandMarks hand) {
    double square = a * a + b * b;
    double c = a / square;
    double d = -b / square;
    return new Registration(c, d, -(c * dx - d * dy), -(d * dx + c * dy)).of(hand);
  }
}
