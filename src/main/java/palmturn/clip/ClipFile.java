package palmturn.clip;

import java.nio.file.Path;
import org.bytedeco.ffmpeg.avformat.AVStream;
import org.jspecify.annotations.Nullable;
import palmturn.trial.ClipFacts;

/** A clip: its frame table and facts, and readers for its picture and sound. Holds no file open. */
public final class ClipFile {
  private final Path path;
  private final Packets packets;
  private final FrameTable frames;
  private @Nullable ClipFacts facts;

  private ClipFile(Path path, Packets packets) {
    this.path = path;
    this.packets = packets;
    this.frames = packets.table();
  }

  /**
   * Reads a clip's packets, without decoding.
   *
   * @throws ClipException if it is no clip that can be read
   */
  public static ClipFile open(Path path) throws ClipException {
    try (Container container = Container.open(path)) {
      return new ClipFile(path, Packets.read(container));
    }
  }

  /** Returns where the clip lies. */
  public Path path() {
    return path;
  }

  /** Returns the times of all frames that are shown. */
  public FrameTable frames() {
    return frames;
  }

  /** Returns the ticks per second of the frame times, rounded. */
  public int ticksPerS() {
    return (int) Math.max(1, Math.round(1 / packets.timeBaseS()));
  }

  /**
   * Returns the facts; the first call hashes the file, decodes a few frames and as much of the
   * sound as it takes to hear something.
   *
   * @throws ClipException if the file has become unreadable
   */
  public synchronized ClipFacts facts() throws ClipException {
    if (facts == null) {
      facts = FactsReader.read(this);
    }
    return facts;
  }

  /**
   * Returns a reader of exact frames, to be closed.
   *
   * @throws ClipException if the file has become unreadable
   */
  public FrameReader newReader() throws ClipException {
    return newReader(Integer.MAX_VALUE);
  }

  /**
   * Returns a reader of exact frames that shrinks larger pictures, to be closed.
   *
   * @param longSidePx the longer side of what it returns, at the most
   * @throws ClipException if the file has become unreadable
   */
  public FrameReader newReader(int longSidePx) throws ClipException {
    Container container = Container.open(path);
    try {
      return new FrameReader(container, packets, longSidePx);
    } catch (ClipException e) {
      container.close();
      throw e;
    }
  }

  /**
   * Returns the sound, null where there is none or it is silent throughout.
   *
   * @throws ClipException if the file has become unreadable or its sound can't be decoded
   */
  public @Nullable Sound sound() throws ClipException {
    try (Container container = Container.open(path)) {
      AVStream stream = container.sound();
      Sound sound = stream == null ? null : SoundReader.read(container, stream);
      return sound == null || sound.isSilent() ? null : sound;
    }
  }

  /**
   * Returns the sound to be gone through without holding all of it, null where there is none or it
   * is silent throughout.
   *
   * @throws ClipException if the file has become unreadable or its sound can't be decoded
   */
  public @Nullable SoundTrack soundTrack() throws ClipException {
    try (Container container = Container.open(path)) {
      AVStream stream = container.sound();
      SoundReader.Beginning begins =
          stream == null ? null : SoundReader.beginning(container, stream);
      return begins == null || begins.silent() ? null : () -> SoundFromFile.begin(path);
    }
  }
}
