package palmturn.estimate;

/** Hears how far an estimate has come, and may stop it between two frames. */
public interface Watch {
  /** Neither listens nor stops. */
  Watch NONE =
      new Watch() {
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
