package palmturn.clip;

import static org.bytedeco.ffmpeg.global.avutil.AV_DICT_IGNORE_SUFFIX;
import static org.bytedeco.ffmpeg.global.avutil.av_dict_get;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.bytedeco.ffmpeg.avformat.AVFormatContext;
import org.bytedeco.ffmpeg.avutil.AVDictionary;
import org.bytedeco.ffmpeg.avutil.AVDictionaryEntry;
import org.jspecify.annotations.Nullable;

/**
 * The metadata that phones write about the filming.
 *
 * @param captureFps frames a second at capture, if noted
 * @param slowedInPart whether stretches are marked to be slowed down
 * @param location whether a place is noted
 */
record CaptureTags(@Nullable Double captureFps, boolean slowedInPart, boolean location) {
  private static final String CAPTURE_FPS = "com.android.capture.fps";
  private static final List<String> PLACES = List.of("location", "iso6709", "gps", "xyz", "loci");
  private static final int TRAILER_BYTES = 4096;

  /** Reads the tags of a file and of its tracks, and a trailer behind its end. */
  static CaptureTags read(AVFormatContext context, Path file) {
    boolean location = hasPlace(context.metadata());
    for (int i = 0; i < context.nb_streams(); i++) {
      location |= hasPlace(context.streams(i).metadata());
    }
    return new CaptureTags(captureFps(context.metadata()), marksSlowStretches(file), location);
  }

  private static @Nullable Double captureFps(AVDictionary tags) {
    AVDictionaryEntry entry = av_dict_get(tags, CAPTURE_FPS, null, 0);
    if (entry == null) {
      return null;
    }
    try {
      double fps = Double.parseDouble(entry.value().getString().strip());
      return fps > 0 && Double.isFinite(fps) ? fps : null;
    } catch (NumberFormatException e) {
      return null;
    }
  }

  private static boolean hasPlace(AVDictionary tags) {
    AVDictionaryEntry entry = av_dict_get(tags, "", null, AV_DICT_IGNORE_SUFFIX);
    while (entry != null) {
      String key = entry.key().getString().toLowerCase(Locale.ROOT);
      if (PLACES.stream().anyMatch(key::contains)) {
        return true;
      }
      entry = av_dict_get(tags, "", entry, AV_DICT_IGNORE_SUFFIX);
    }
    return false;
  }

  /** Some phones append a directory that ends in "SEFT" and lists slowed stretches by this name. */
  private static boolean marksSlowStretches(Path file) {
    try (RandomAccessFile in = new RandomAccessFile(file.toFile(), "r")) {
      int length = (int) Math.min(TRAILER_BYTES, in.length());
      byte[] end = new byte[length];
      in.seek(in.length() - length);
      in.readFully(end);
      String text = new String(end, StandardCharsets.ISO_8859_1);
      return text.endsWith("SEFT") && text.contains("SlowMotion_Data");
    } catch (IOException e) {
      return false;
    }
  }
}
