package palmturn.clip;

import static org.bytedeco.ffmpeg.global.avcodec.av_packet_alloc;
import static org.bytedeco.ffmpeg.global.avcodec.av_packet_free;
import static org.bytedeco.ffmpeg.global.avcodec.av_packet_unref;
import static org.bytedeco.ffmpeg.global.avformat.av_read_frame;

import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.HexFormat;
import org.bytedeco.ffmpeg.avcodec.AVPacket;
import org.bytedeco.ffmpeg.avformat.AVStream;
import org.jspecify.annotations.Nullable;

/**
 * SHA-256 hex digests of a clip's coded picture and sound, independent of the container.
 *
 * @param picture of the picture
 * @param sound of the first sound track; null where there is none
 */
public record StreamHash(String picture, @Nullable String sound) {
  /**
   * Hashes a whole clip, without decoding.
   *
   * @throws ClipException if it is no clip that can be read
   */
  public static StreamHash of(Path file) throws ClipException {
    MessageDigest picture = ClipHash.digest();
    MessageDigest sound = ClipHash.digest();
    try (Container container = Container.open(file)) {
      AVStream heard = container.sound();
      AVPacket packet = av_packet_alloc();
      try {
        while (av_read_frame(container.context(), packet) >= 0) {
          if (packet.stream_index() == container.video().index()) {
            picture.update(bytes(packet));
          } else if (heard != null && packet.stream_index() == heard.index()) {
            sound.update(bytes(packet));
          }
          av_packet_unref(packet);
        }
      } finally {
        av_packet_free(packet);
      }
      return new StreamHash(
          HexFormat.of().formatHex(picture.digest()),
          heard == null ? null : HexFormat.of().formatHex(sound.digest()));
    }
  }

  private static byte[] bytes(AVPacket packet) {
    byte[] bytes = new byte[packet.size()];
    if (bytes.length > 0) {
      packet.data().get(bytes);
    }
    return bytes;
  }
}
