package palmturn.clip;

import java.nio.file.Path;
import org.bytedeco.ffmpeg.avformat.AVStream;
import org.jspecify.annotations.Nullable;

/** A pass through a file's sound track that decodes as it goes. */
final class SoundFromFile implements SoundTrack.Pass {
  private final Container container;
  private final SoundReader reader;

  private SoundFromFile(Container container, SoundReader reader) {
    this.container = container;
    this.reader = reader;
    reader.hold(0, 1);
  }

  static SoundFromFile begin(Path file) throws ClipException {
    Container container = Container.open(file);
    boolean open = false;
    try {
      AVStream stream = container.sound();
      @Nullable SoundReader reader = stream == null ? null : SoundReader.open(container, stream);
      if (reader == null) {
        throw new ClipException(container.name() + " has lost its sound: copy it again");
      }
      open = true;
      return new SoundFromFile(container, reader);
    } finally {
      if (!open) {
        container.close();
      }
    }
  }

  @Override
  public double firstS() {
    return reader.firstS();
  }

  @Override
  public int sampleRate() {
    return reader.sampleRate();
  }

  @Override
  public SoundTrack.Held hold(int from, int to) {
    return reader.hold(from, to);
  }

  @Override
  public void close() {
    reader.close();
    container.close();
  }
}
