package palmturn.clip;

/** Hears how far an estimate has come, and may stop it between two frames. */
public interface Progress {
  /** Neither listens nor stops. */
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
   * Hears how much is done.
   *
   * @param share 0 to 1
   * @param what in words
   */
  void at(double share, String what);

  /** Returns whether to stop; asked often. */
  boolean stopped();
}
