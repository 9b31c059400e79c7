package palmturn.store;

import java.nio.file.Path;
import palmturn.trial.Reading;
import palmturn.trial.SampleFiles;
import palmturn.trial.Side;
import palmturn.trial.Slap;
import palmturn.trial.StartedFrom;
import palmturn.trial.Zone;

/**
 * A program of its own that marks without end and says each mark once it is kept. Words: session,
 * first mark, and how many milliseconds after it halts at once (below 0 for never).
 */
final class Marker {
  /** Marks after which it starts anew, so that a reading stays as long as a real one. */
  static final int ROUND = 60;

  private Marker() {}

  public static void main(String[] args) throws Exception {
    try (SessionFolder session = SessionFolder.open(Path.of(args[0]))) {
      int haltAfterMs = Integer.parseInt(args[2]);
      int first = Integer.parseInt(args[1]);
      for (int count = first; ; count++) {
        session.keep(SampleFiles.RIGHT, after(count), "Add mark " + count);
        System.out.println(count);
        System.out.flush();
        if (count == first && haltAfterMs >= 0) {
          haltIn(haltAfterMs);
        }
      }
    }
  }

  private static void haltIn(int ms) {
    Thread thread =
        new Thread(
            () -> {
              try {
                Thread.sleep(ms);
              } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
              }
              Runtime.getRuntime().halt(3);
            });
    thread.setDaemon(true);
    thread.start();
  }

  /** Returns the reading after a count of marks; its note holds the count. */
  static Reading after(int count) {
    Reading reading = Reading.begin("AB", StartedFrom.NOTHING);
    for (int i = count - count % ROUND; i <= count; i++) {
      reading =
          reading.plus(
              Slap.onFrame(Slap.Kind.SLAP, i / 4.0, 1 / 60.0, Side.PALM, Zone.CENTRE)
                  .withNote("mark " + i));
    }
    return reading;
  }
}
