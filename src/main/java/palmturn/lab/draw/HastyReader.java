package palmturn.lab.draw;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import palmturn.trial.Extra;
import palmturn.trial.Reading;
import palmturn.trial.Side;
import palmturn.trial.Slap;
import palmturn.trial.StartedFrom;
import palmturn.trial.Zone;

/** An invented second reader, who marks like a careful one but for five mistakes. */
public final class HastyReader {
  /** Over three frames at 60 a second, so that the two marks differ beyond any tolerance. */
  private static final double LATE_S = 0.06;

  /** Slaps from one planted mistake to the next. */
  private static final int APART = 4;

  private HastyReader() {}

  /**
   * Returns the marks: one slap is missing, one is late, one has the other side, one the wrong
   * zone, and a double counts as a slap where there is one. The same marks and seed give the same.
   *
   * @param careful of 24 marks or more
   */
  public static Reading read(Reading careful, String reader, long seed) {
    List<Slap> slaps = new ArrayList<>();
    // No mistake lies beside another, so that each is one difference.
    int first = 2 + new Random(seed).nextInt(2);
    for (int i = 0; i < careful.slaps().size(); i++) {
      Slap slap = careful.slaps().get(i);
      boolean planted = (i - first) % APART == 0 && slap.kind() == Slap.Kind.SLAP;
      switch (planted ? (i - first) / APART : -1) {
        case 0 -> {
          continue;
        }
        case 1 -> slaps.add(late(slap));
        case 2 -> slaps.add(slap.withSide(slap.side() == Side.PALM ? Side.BACK : Side.PALM));
        case 3 -> slaps.add(slap.withZone(slap.zone() == Zone.EDGE ? Zone.FINGERS : Zone.EDGE));
        default ->
            slaps.add(slap.kind() == Slap.Kind.DOUBLE ? slap.withKind(Slap.Kind.SLAP) : slap);
      }
    }
    return new Reading(reader, true, StartedFrom.NOTHING, slaps, careful.spans(), Extra.NONE);
  }

  private static Slap late(Slap slap) {
    return slap.movedToFrame(slap.timeS() + LATE_S, slap.resolutionS());
  }
}
