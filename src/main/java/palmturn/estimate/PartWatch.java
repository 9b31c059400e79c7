package palmturn.estimate;

/**
 * The watch of one part of the work.
 *
 * @param whole who hears of it
 * @param start share of the whole that was done before
 * @param share of the whole that this part is
 */
record PartWatch(Watch whole, double start, double share) implements Watch {
  @Override
  public void at(double done, String what) {
    whole.at(start + share * done, what);
  }

  @Override
  public boolean stopped() {
    return whole.stopped();
  }
}
