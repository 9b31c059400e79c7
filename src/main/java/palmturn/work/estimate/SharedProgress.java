package palmturn.work.estimate;

import palmturn.clip.Progress;

/** The progress of a whole whose pieces run at the same time. */
final class SharedProgress {
  private final Progress whole;
  private final double[] shares;
  private double sum;

  SharedProgress(Progress whole, int parts) {
    this.whole = whole;
    this.shares = new double[parts];
  }

  /** Returns the progress of one piece, whose name precedes what is being done. */
  Progress part(int index, String name) {
    return new Progress() {
      @Override
      public void at(double share, String what) {
        update(index, share, name + ": " + what);
      }

      @Override
      public boolean stopped() {
        return whole.stopped();
      }
    };
  }

  private synchronized void update(int index, double share, String what) {
    sum += share - shares[index];
    shares[index] = share;
    whole.at(sum / shares.length, what);
  }
}
