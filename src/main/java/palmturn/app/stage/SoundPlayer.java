package palmturn.app.stage;

import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioSystem;
import javax.sound.sampled.LineUnavailableException;
import javax.sound.sampled.SourceDataLine;
import org.jspecify.annotations.Nullable;
import palmturn.clip.Sound;

/** A player of the clip's sound at full speed; silent on a computer without a loudspeaker. */
public final class SoundPlayer {
  private static final int PIECE = 2048;

  private volatile @Nullable Thread playing;

  /** Plays from a moment until stopped or the sound ends. */
  public void play(Sound sound, double fromS) {
    stop();
    int from = (int) Math.round((fromS - sound.firstS()) * sound.sampleRate());
    Thread thread = new Thread(() -> playPieces(sound, from), "palmturn-voice");
    thread.setDaemon(true);
    playing = thread;
    thread.start();
  }

  /** Falls silent. */
  public void stop() {
    playing = null;
  }

  private void playPieces(Sound sound, int from) {
    AudioFormat format = new AudioFormat(sound.sampleRate(), 16, 1, true, false);
    try (SourceDataLine line = AudioSystem.getSourceDataLine(format)) {
      line.open(format, PIECE * 8);
      line.start();
      byte[] piece = new byte[2 * PIECE];
      for (int at = from;
          at < sound.samples().length && playing == Thread.currentThread();
          at += PIECE) {
        fill(piece, sound.samples(), at);
        line.write(piece, 0, piece.length);
      }
      line.flush();
    } catch (LineUnavailableException | IllegalArgumentException e) {
      // No loudspeaker: the picture plays on without one.
    }
  }

  private static void fill(byte[] piece, float[] samples, int at) {
    for (int i = 0; i < PIECE; i++) {
      int where = at + i;
      float value = where < 0 || where >= samples.length ? 0 : samples[where];
      int whole = Math.round(Math.max(-1, Math.min(1, value)) * Short.MAX_VALUE);
      piece[2 * i] = (byte) whole;
      piece[2 * i + 1] = (byte) (whole >> 8);
    }
  }
}
