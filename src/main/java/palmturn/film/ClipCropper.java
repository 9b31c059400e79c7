package palmturn.film;

import java.awt.Rectangle;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.function.DoubleConsumer;
import palmturn.clip.ClipException;
import palmturn.clip.ClipFile;
import palmturn.clip.FrameReader;
import palmturn.clip.FrameTable;
import palmturn.clip.Picture;
import palmturn.clip.Sound;

/**
 * A writer of clips with everything outside one part of the picture blacked out. The picture keeps
 * its size, so that coordinates stay valid.
 */
public final class ClipCropper {
  private static final int BLACK = 0xFF000000;
  private static final int LEAST = 16;
  private static final double BITS_PER_PIXEL = 0.15;
  private static final int SOUND_BITS_PER_S = 96_000;
  private static final int MOST_FPS = 240;

  private ClipCropper() {}

  /**
   * Writes a copy of the clip with only that part visible, every frame at its time.
   *
   * @param part pixels of the upright picture
   * @param soundKept keeps or silences the sound, from 0 s on
   * @param done receives the share written, and may throw to stop
   * @throws ClipException if the clip can't be read
   * @throws IOException if it can't be written; then there is no new file
   */
  public static void write(
      Path from, Rectangle part, Path to, SoundFilter soundKept, DoubleConsumer done)
      throws ClipException, IOException {
    ClipFile clip = ClipFile.open(from);
    FrameTable frames = clip.frames();
    Sound all = clip.sound();
    float[] sound = all == null ? null : soundKept.of(fromZero(all), all.sampleRate());
    int width = even(clip.facts().width());
    int height = even(clip.facts().height());
    int fps = (int) Math.max(1, Math.min(MOST_FPS, Math.round(1 / frames.medianS())));
    ClipWriter.Settings settings =
        new ClipWriter.Settings(
            width,
            height,
            fps,
            (int) (BITS_PER_PIXEL * part.width * part.height * fps),
            fps,
            sound == null || all == null ? 0 : all.sampleRate(),
            SOUND_BITS_PER_S);
    try (ClipWriter writer = ClipWriter.create(to, settings, clip.ticksPerS());
        FrameReader reader = clip.newReader()) {
      int[] kept = new int[width * height];
      Arrays.fill(kept, BLACK);
      for (int i = 0; i < frames.size(); i++) {
        done.accept(i / (double) frames.size());
        copy(reader.read(i), part, kept, width);
        writer.picture(frames.timeS(i), kept);
      }
      if (sound != null) {
        writer.sound(sound);
      }
      writer.finish();
    }
  }

  /** Encoders want even numbers: a last row or column of black is added. */
  private static int even(int pixels) {
    return Math.max(LEAST, (pixels + 1) / 2 * 2);
  }

  private static void copy(Picture picture, Rectangle part, int[] kept, int width) {
    for (int y = part.y; y < part.y + part.height; y++) {
      System.arraycopy(
          picture.argb(), y * picture.width() + part.x, kept, y * width + part.x, part.width);
    }
  }

  /**
   * The new sound begins at 0: what was before is left out, what was later is led in by silence.
   */
  private static float[] fromZero(Sound sound) {
    int late = (int) Math.round(sound.firstS() * sound.sampleRate());
    float[] samples = new float[Math.max(0, sound.samples().length + late)];
    for (int i = Math.max(0, late); i < samples.length; i++) {
      samples[i] = sound.samples()[i - late];
    }
    return samples;
  }
}
