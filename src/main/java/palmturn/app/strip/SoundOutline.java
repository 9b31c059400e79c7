package palmturn.app.strip;

import javafx.scene.canvas.GraphicsContext;
import palmturn.app.look.Theme;
import palmturn.chart.BeatStrip;
import palmturn.clip.Sound;

/**
 * A sound's outline: the peak of each stretch of two milliseconds.
 *
 * @param firstS time of the first stretch, seconds on the picture's time line
 * @param peaks largest value of each stretch, 0 to 1
 */
public record SoundOutline(double firstS, float[] peaks) {
  /** Length of a stretch, seconds. */
  static final double STRETCH_S = 0.002;

  /** Half the height of its lane, pixels. */
  private static final double HALF = 14;

  /** Returns the outline of a sound, its loudest stretch drawn in full height. */
  public static SoundOutline of(Sound sound) {
    double perStretch = sound.sampleRate() * STRETCH_S;
    float[] peaks = new float[(int) Math.ceil(sound.samples().length / perStretch)];
    float loudest = 1e-6f;
    for (int i = 0; i < sound.samples().length; i++) {
      int at = Math.min(peaks.length - 1, (int) (i / perStretch));
      peaks[at] = Math.max(peaks[at], Math.abs(sound.samples()[i]));
      loudest = Math.max(loudest, peaks[at]);
    }
    for (int i = 0; i < peaks.length; i++) {
      peaks[i] /= loudest;
    }
    return new SoundOutline(sound.firstS(), peaks);
  }

  /** Returns how loud a stretch of time is at most; 0 outside the sound. */
  float loudest(double fromS, double toS) {
    int from = Math.max(0, (int) Math.floor((fromS - firstS) / STRETCH_S));
    int to = Math.min(peaks.length - 1, (int) Math.floor((toS - firstS) / STRETCH_S));
    float most = 0;
    for (int i = from; i <= to; i++) {
      most = Math.max(most, peaks[i]);
    }
    return most;
  }

  /**
   * Draws the outline.
   *
   * @param y middle of its lane, pixels
   * @param offsetS how much later the sound is than the picture, seconds
   */
  public void draw(GraphicsContext g, BeatStrip strip, double y, double offsetS) {
    g.setStroke(Theme.fx(strip.palette().wave()));
    g.setLineWidth(1);
    BeatStrip.View view = strip.view();
    for (double x = view.leftX(); x < view.rightX(); x++) {
      double loud = loudest(view.timeS(x) + offsetS, view.timeS(x + 1) + offsetS);
      double half = Math.max(0.5, HALF * loud);
      g.strokeLine(x + 0.5, y - half, x + 0.5, y + half);
    }
  }
}
