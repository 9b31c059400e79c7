package palmturn.film;

import static org.bytedeco.ffmpeg.global.avcodec.AV_CODEC_ID_MJPEG;
import static org.bytedeco.ffmpeg.global.avcodec.AV_CODEC_ID_MPEG2VIDEO;
import static org.bytedeco.ffmpeg.global.avcodec.AV_CODEC_ID_MPEG4;
import static org.bytedeco.ffmpeg.global.avcodec.AV_CODEC_ID_PNG;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.function.UnaryOperator;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import palmturn.clip.ClipException;
import palmturn.clip.ClipFile;
import palmturn.clip.FrameReader;

/** Tags planted inside coded pictures, of each kind that cameras write, are gone after clearing. */
class TagFilterTest {
  private static final String TAG =
      "PLANTED 2026:11:14 12:00:00 +48.2082+016.3738 Phone of F. Lastname";
  private static final byte[] TEXT = TAG.getBytes(StandardCharsets.US_ASCII);

  @TempDir Path folder;

  private static Path real(String name) throws Exception {
    return Path.of(Objects.requireNonNull(ClipFile.class.getResource(name), name).toURI());
  }

  private static byte[] joined(byte[]... parts) {
    ByteArrayOutputStream all = new ByteArrayOutputStream();
    for (byte[] part : parts) {
      all.writeBytes(part);
    }
    return all.toByteArray();
  }

  private static byte[] bytes(int... values) {
    byte[] bytes = new byte[values.length];
    for (int i = 0; i < values.length; i++) {
      bytes[i] = (byte) values[i];
    }
    return bytes;
  }

  /** A unit with its length in front, as in an MP4 file. */
  private static byte[] unit(byte[] header, byte[] content) {
    int length = header.length + content.length;
    return joined(bytes(0, 0, length >> 8, length & 255), header, content);
  }

  /** A message of a type: its length, a name of 16 bytes, the text, and the end of the unit. */
  private static byte[] message(int type) {
    return joined(bytes(type, 16 + TEXT.length), new byte[16].clone(), TEXT, bytes(0x80));
  }

  private static byte[] sei(byte[] header, int type) {
    byte[] message = message(type);
    java.util.Arrays.fill(message, 2, 18, (byte) 0x55);
    return unit(header, message);
  }

  private void cleared(Path planted, String ending) throws Exception {
    assertTrue(holds(planted), "the tag is there before");
    Path cleared = folder.resolve("cleared" + ending);
    Remuxer.write(planted, cleared);
    assertFalse(holds(cleared), "the tag is gone");
    assertEquals(pictures(planted), pictures(cleared));
  }

  private static boolean holds(Path clip) throws IOException {
    return Files.readString(clip, StandardCharsets.ISO_8859_1).contains("PLANTED");
  }

  private static List<Integer> pictures(Path clip) throws Exception {
    ClipFile file = ClipFile.open(clip);
    List<Integer> hashes = new ArrayList<>();
    try (FrameReader reader = file.newReader()) {
      for (int i = 0; i < file.frames().size(); i++) {
        hashes.add(java.util.Arrays.hashCode(reader.read(i).argb()));
      }
    }
    return hashes;
  }

  @ParameterizedTest
  @CsvSource({"6, 5", "6, 4", "6, 200", "24, 5", "12, 5"})
  void unitsOfH264(int unitType, int messageType) throws Exception {
    Path planted = folder.resolve("planted.mp4");
    byte[] tag = sei(bytes(unitType), messageType);
    PlantedClip.copy(real("sample_12_5fps_720p_1s.mp4"), planted, frame -> joined(tag, frame));
    cleared(planted, ".mp4");
  }

  @ParameterizedTest
  @CsvSource({"39, 5", "40, 4", "38, 5", "50, 5"})
  void unitsOfHevc(int unitType, int messageType) throws Exception {
    Path planted = folder.resolve("planted.mp4");
    byte[] tag = sei(bytes(unitType << 1, 1), messageType);
    UnaryOperator<byte[]> how = frame -> unitType == 40 ? joined(frame, tag) : joined(tag, frame);
    PlantedClip.copy(real("h265_with_metadata_track.mp4"), planted, how);
    cleared(planted, ".mp4");
  }

  @Test
  void metadataOfAv1() throws Exception {
    Path planted = folder.resolve("planted.mp4");
    byte[] content = joined(bytes(4, 0xB5), TEXT, bytes(0x80));
    byte[] tag = joined(bytes(5 << 3 | 2, content.length), content);
    PlantedClip.copy(real("hdr10-av1.mp4"), planted, frame -> joined(frame, tag));
    cleared(planted, ".mp4");
  }

  @ParameterizedTest
  @CsvSource({"0xE1, .avi", "0xE1, .mov", "0xFE, .avi", "0xED, .mkv"})
  void segmentsOfMotionJpeg(String marker, String ending) throws Exception {
    Path planted = folder.resolve("planted" + ending);
    byte[] tag =
        joined(
            bytes(0xFF, Integer.decode(marker), 0, 2 + 6 + TEXT.length),
            "Exif\0\0".getBytes(StandardCharsets.US_ASCII),
            TEXT);
    List<byte[]> pictures = new ArrayList<>();
    for (int i = 0; i < 5; i++) {
      ByteArrayOutputStream jpeg = new ByteArrayOutputStream();
      ImageIO.write(image(i), "jpeg", jpeg);
      byte[] whole = jpeg.toByteArray();
      byte[] rest = java.util.Arrays.copyOfRange(whole, 2, whole.length);
      pictures.add(joined(bytes(0xFF, 0xD8), tag, rest));
    }
    PlantedClip.write(pictures, AV_CODEC_ID_MJPEG, 64, 48, planted);
    cleared(planted, ending);
  }

  private static BufferedImage image(int shift) {
    BufferedImage image = new BufferedImage(64, 48, BufferedImage.TYPE_3BYTE_BGR);
    Graphics2D g = image.createGraphics();
    g.setColor(Color.ORANGE);
    g.fillRect(4 * shift, 8, 20, 20);
    g.dispose();
    return image;
  }

  @ParameterizedTest
  @CsvSource({"mpeg4, mp4", "mpeg4, avi", "mpeg2, mkv"})
  void userDataOfMpeg(String code, String ending) throws Exception {
    int codec = code.equals("mpeg4") ? AV_CODEC_ID_MPEG4 : AV_CODEC_ID_MPEG2VIDEO;
    Path planted = folder.resolve("planted." + ending);
    byte[] tag = joined(bytes(0, 0, 1, 0xB2), TEXT);
    List<byte[]> pictures =
        PlantedClip.encoded(codec, 64, 48, 8).stream().map(each -> joined(tag, each)).toList();
    PlantedClip.write(pictures, codec, 64, 48, planted);
    cleared(planted, "." + ending);
  }

  @Test
  void otherCodesAreRefusedInOneLine() throws Exception {
    List<byte[]> pictures = new ArrayList<>();
    for (int i = 0; i < 3; i++) {
      ByteArrayOutputStream png = new ByteArrayOutputStream();
      ImageIO.write(image(i), "png", png);
      pictures.add(png.toByteArray());
    }
    Path clip = folder.resolve("pictures.mkv");
    PlantedClip.write(pictures, AV_CODEC_ID_PNG, 64, 48, clip);
    Path to = folder.resolve("cleared.mkv");
    ClipException refused = assertThrows(ClipException.class, () -> Remuxer.write(clip, to));
    assertTrue(refused.getMessage().contains("coded as png"), refused.getMessage());
    assertFalse(Files.exists(to));
  }

  @Test
  void userDataGoesUpToTheNextStartCode() {
    byte[] coded =
        joined(bytes(0, 0, 1, 0xB6, 7), bytes(0, 0, 1, 0xB2), TEXT, bytes(0, 0, 1, 0xB6, 8));
    assertArrayEquals(bytes(0, 0, 1, 0xB6, 7, 0, 0, 1, 0xB6, 8), TagFilter.withoutUserData(coded));
  }
}
