package palmturn.clip;

/** Makes frame tables for tests of other rooms, which open no clip. */
public final class FrameTables {
  private FrameTables() {}

  /** Returns a table of frames at these times, seconds. */
  public static FrameTable at(double... timesS) {
    return new FrameTable(timesS);
  }

  /** Returns a table of some frames at a steady rate, from 0. */
  public static FrameTable steady(int frames, double perSecond) {
    double[] timesS = new double[frames];
    for (int i = 0; i < frames; i++) {
      timesS[i] = i / perSecond;
    }
    return new FrameTable(timesS);
  }
}
