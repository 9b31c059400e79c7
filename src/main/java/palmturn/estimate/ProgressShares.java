package palmturn.estimate;

/**
 * Shares of the progress by the time that each step takes on two cores; the elbow has the rest.
 *
 * @param motion looking for the motion, 0 to 1
 * @param hands looking at the hands, 0 to 1
 */
record ProgressShares(double motion, double hands) {
  static final ProgressShares WITHOUT_HANDS = new ProgressShares(0.6, 0);
  static final ProgressShares WITH_HANDS = new ProgressShares(0.25, 0.6);

  /** Returns where the elbow's share begins. */
  double elbowFrom() {
    return motion + hands;
  }

  /** Returns the elbow's share. */
  double elbow() {
    return 1 - elbowFrom();
  }
}
