package palmturn.work;

import palmturn.clip.Progress;

/** One progress for several pieces of work that go on at the same time. */
final class SharedProgress {
  private final Progress whole;
  private final double[] shares;
  private double sum;

  SharedProgress(Progress whole, int parts) {
    this.whole = whole;
    this.shares = new double[parts];
  }

  /** Returns the progress of one piece, which says its name before what is being done. */
  Progress part(int index, String name) {
    return new Progress() {
      @Override
      public void at(double share, String what) {
        tell(index, share, name + ": " + what);
      }

      @Override
      public boolean stopped() {
        return whole.stopped();
      }
    };
  }

  private synchronized void tell(int index, double share, String what) {
    sum += share - shares[index];
    shares[index] = share;
    whole.at(sum / shares.length, what);
  }
}
