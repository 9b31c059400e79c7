package palmturn.clip;

/** A listener to a task's progress that can stop it. */
public interface Progress {
  /** Ignores progress and never stops. */
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
   * Receives the progress.
   *
   * @param share 0 to 1
   * @param what current step, in words
   */
  void at(double share, String what);

  /** Returns whether to stop; polled often. */
  boolean stopped();
}
