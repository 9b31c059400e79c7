package palmturn.app.desk;

import java.util.List;
import org.jspecify.annotations.Nullable;
import palmturn.app.marking.MarkPass;
import palmturn.app.marking.Marking;
import palmturn.app.stage.Stage;
import palmturn.app.strip.Strip;
import palmturn.clip.FrameTable;
import palmturn.trial.Reading;
import palmturn.trial.Slap;

/** Plays the slap that a pass has come to over and over, and centres it on the strip. */
record PassLoop(OpenSession session, Marking marking, Stage stage, Strip strip)
    implements MarkPass.Display {
  /** Played before and after a slap, real seconds. */
  private static final double HALF_S = 0.15;

  /** Never as far as the next slap: a share of the interval to it. */
  private static final double OF_INTERVAL = 0.45;

  @Override
  public void loop(Slap slap, MarkPass.Topic about) {
    double[] halves = halves(slap);
    strip.showClose(slap.timeS(), about == MarkPass.Topic.TIMES ? Strip.CLOSE : Strip.TYPING);
    stage.loop(slap.timeS() - halves[0], slap.timeS() + halves[1]);
  }

  @Override
  public void stopAt(@Nullable Slap slap) {
    FrameTable frames = stage.framesProperty().get();
    if (slap != null && frames != null) {
      stage.seek(frames.nearest(slap.timeS()));
      marking.chooseSlap(slap);
    }
    strip.showWhole();
  }

  /** Returns the media seconds that are played before and after a slap. */
  private double[] halves(Slap slap) {
    double most = HALF_S / session.timeScale().factorAt(slap.timeS());
    double before = most;
    double after = most;
    Reading now = marking.readingProperty().get();
    for (Slap other : now == null ? List.<Slap>of() : now.slaps()) {
      double away = other.timeS() - slap.timeS();
      if (away < 0) {
        before = Math.min(before, -OF_INTERVAL * away);
      } else if (away > 0) {
        after = Math.min(after, OF_INTERVAL * away);
      }
    }
    FrameTable frames = stage.framesProperty().get();
    double least = frames == null ? 0 : 2 * frames.medianS();
    return new double[] {Math.max(before, least), Math.max(after, least)};
  }
}
