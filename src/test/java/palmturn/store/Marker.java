package palmturn.store;

import java.nio.file.Path;
import palmturn.trial.Reading;
import palmturn.trial.SampleFiles;
import palmturn.trial.Side;
import palmturn.trial.Slap;
import palmturn.trial.StartedFrom;
import palmturn.trial.Zone;

/** A program of its own that marks without end and says each mark once it is kept. */
final class Marker {
  /** Marks after which it starts anew, so that a reading stays as long as a real one. */
  static final int ROUND = 60;

  private Marker() {}

  public static void main(String[] args) throws Exception {
    try (SessionFolder session = SessionFolder.open(Path.of(args[0]))) {
      for (int count = Integer.parseInt(args[1]); ; count++) {
        session.keep(SampleFiles.RIGHT, after(count), "Add mark " + count);
        System.out.println(count);
        System.out.flush();
      }
    }
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
