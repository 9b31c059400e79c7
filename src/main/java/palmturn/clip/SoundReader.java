package palmturn.clip;

import static org.bytedeco.ffmpeg.global.avutil.AV_CHANNEL_ORDER_UNSPEC;
import static org.bytedeco.ffmpeg.global.avutil.AV_NOPTS_VALUE;
import static org.bytedeco.ffmpeg.global.avutil.AV_SAMPLE_FMT_FLT;
import static org.bytedeco.ffmpeg.global.avutil.av_channel_layout_default;
import static org.bytedeco.ffmpeg.global.avutil.av_q2d;
import static org.bytedeco.ffmpeg.global.swresample.swr_alloc_set_opts2;
import static org.bytedeco.ffmpeg.global.swresample.swr_convert;
import static org.bytedeco.ffmpeg.global.swresample.swr_free;
import static org.bytedeco.ffmpeg.global.swresample.swr_init;

import java.util.Arrays;
import org.bytedeco.ffmpeg.avformat.AVStream;
import org.bytedeco.ffmpeg.avutil.AVChannelLayout;
import org.bytedeco.ffmpeg.avutil.AVFrame;
import org.bytedeco.ffmpeg.swresample.SwrContext;
import org.bytedeco.javacpp.FloatPointer;
import org.bytedeco.javacpp.PointerPointer;
import org.jspecify.annotations.Nullable;

/**
 * A decoder of a sound track to mono samples, each placed by its timestamp: the codec's delay is
 * removed, gaps become silence.
 */
final class SoundReader {
  /** Timestamp jitter of containers with coarse ticks; samples within it are contiguous. */
  private static final double FOLLOWS_ON_S = 0.002;

  /** Total length of gaps; more is a damaged timestamp and would exhaust memory. */
  private static final long MOST_IN_HOLES_S = 600;

  /** Highest sample rate; a damaged header may claim any. */
  private static final int MOST_HZ = 768_000;

  /** An hour and a half at 48 kHz, 1 GiB; what comes later is left out. */
  private static final int MOST_SAMPLES = 1 << 28;

  private float[] samples = new float[1 << 16];
  private int used;
  private long inHoles;
  private double firstS = Double.NaN;

  private SoundReader() {}

  /**
   * Returns the sound of a track, null if nothing in it can be decoded.
   *
   * @throws ClipException if its kind can't be decoded
   */
  static @Nullable Sound read(Container container, AVStream stream) throws ClipException {
    return read(container, stream, false);
  }

  /**
   * Returns a track up to its first audible frame, all of it if it is silent; null if nothing in it
   * can be decoded.
   *
   * @throws ClipException if its kind can't be decoded
   */
  static @Nullable Sound untilHeard(Container container, AVStream stream) throws ClipException {
    return read(container, stream, true);
  }

  private static @Nullable Sound read(Container container, AVStream stream, boolean untilHeard)
      throws ClipException {
    SoundReader reader = new SoundReader();
    int rate = stream.codecpar().sample_rate();
    if (rate <= 0 || rate > MOST_HZ) {
      return null;
    }
    double tickS = av_q2d(stream.time_base());
    SwrContext mixer = null;
    int mixedForm = 0;
    try (Decoder decoder = Decoder.of(container, stream)) {
      for (AVFrame frame = decoder.next(); frame != null; frame = decoder.next()) {
        if (frame.sample_rate() != rate) {
          continue;
        }
        // A track may change its form on the way; a mixer set up for the old one reads astray.
        int form = frame.format() * 1000 + frame.ch_layout().nb_channels();
        if (mixer == null || form != mixedForm) {
          if (mixer != null) {
            swr_free(mixer);
          }
          mixedForm = form;
          mixer = monoMixer(frame, rate);
          if (mixer == null) {
            return null;
          }
        }
        double atS = frame.pts() == AV_NOPTS_VALUE ? Double.NaN : frame.pts() * tickS;
        float[] mono = mono(mixer, frame);
        reader.put(mono, atS, rate);
        if (untilHeard && !new Sound(0, rate, mono).isSilent()) {
          break;
        }
      }
    } finally {
      if (mixer != null) {
        swr_free(mixer);
      }
    }
    return Double.isNaN(reader.firstS)
        ? null
        : new Sound(reader.firstS, rate, Arrays.copyOf(reader.samples, reader.used));
  }

  private static @Nullable SwrContext monoMixer(AVFrame frame, int rate) {
    SwrContext mixer = new SwrContext(null);
    try (AVChannelLayout mono = new AVChannelLayout();
        AVChannelLayout guessed = new AVChannelLayout()) {
      av_channel_layout_default(mono, 1);
      AVChannelLayout in = frame.ch_layout();
      if (in.order() == AV_CHANNEL_ORDER_UNSPEC) {
        av_channel_layout_default(guessed, in.nb_channels());
        in = guessed;
      }
      int set =
          swr_alloc_set_opts2(
              mixer, mono, AV_SAMPLE_FMT_FLT, rate, in, frame.format(), rate, 0, null);
      return set < 0 || swr_init(mixer) < 0 ? null : mixer;
    }
  }

  private static float[] mono(SwrContext mixer, AVFrame frame) {
    int count = frame.nb_samples();
    float[] mono = new float[count];
    try (FloatPointer out = new FloatPointer(count);
        PointerPointer<FloatPointer> planes = new PointerPointer<>(1)) {
      planes.put(0, out);
      int made = swr_convert(mixer, planes, count, frame.extended_data(), count);
      out.get(mono, 0, Math.max(0, Math.min(made, count)));
    }
    return mono;
  }

  private void put(float[] more, double atS, int rate) {
    if (Double.isNaN(firstS)) {
      firstS = Double.isNaN(atS) ? 0 : atS;
    }
    long wanted = used;
    if (!Double.isNaN(atS) && Math.abs(atS - (firstS + used / (double) rate)) > FOLLOWS_ON_S) {
      wanted = Math.round((atS - firstS) * rate);
    }
    long hole = Math.max(0, wanted - used);
    if (wanted < 0
        || hole > MOST_IN_HOLES_S * rate - inHoles
        || wanted + more.length > MOST_SAMPLES) {
      return;
    }
    inHoles += hole;
    int at = (int) wanted;
    int end = at + more.length;
    if (end > samples.length) {
      samples =
          Arrays.copyOf(samples, Math.max(end, (int) Math.min(MOST_SAMPLES, 2L * samples.length)));
    }
    System.arraycopy(more, 0, samples, at, more.length);
    used = Math.max(used, end);
  }
}
