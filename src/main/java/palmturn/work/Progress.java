package palmturn.work;

/** How long work tells how far it is, and learns that it shall stop. */
public interface Progress {
  /** Shows nothing and never stops. */
  Progress NONE =
      new Progress() {
        @Override
        public void at(double share, String what) {}

        @Override
        public boolean stopped() {
          return false;
        }
      };

  /**
   * Says how far the work is.
   *
   * @param share of the whole that is done, 0 to 1
   * @param what is being done, in a few words
   */
  void at(double share, String what);

  /** Returns whether the work shall stop at the next good moment. */
  boolean stopped();
}
