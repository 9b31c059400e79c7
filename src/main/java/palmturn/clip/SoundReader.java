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
 * removed, gaps become silence. Samples that are no longer asked for are dropped.
 */
final class SoundReader implements AutoCloseable {
  /** Timestamp jitter of containers with coarse ticks; samples within it are contiguous. */
  private static final double FOLLOWS_ON_S = 0.002;

  /** Total length of gaps; more is a damaged timestamp and would exhaust memory. */
  private static final long MOST_IN_HOLES_S = 600;

  /** Highest sample rate; a damaged header may claim any. */
  private static final int MOST_HZ = 768_000;

  /** An hour and a half at 48 kHz, 1 GiB; what comes later is left out. */
  private static final int MOST_SAMPLES = 1 << 28;

  private final Decoder decoder;
  private final int rate;
  private final double tickS;
  private final int mostSamples;
  private @Nullable SwrContext mixer;
  private int mixedForm;

  /** Samples from {@link #base} on; zero after the last. */
  private float[] samples = new float[1 << 16];

  private int base;
  private int used;
  private int keepFrom;
  private long inHoles;
  private double firstS = Double.NaN;
  private boolean audible;
  private boolean failed;

  private SoundReader(Container container, AVStream stream, int mostSamples) throws ClipException {
    decoder = Decoder.of(container, stream);
    rate = stream.codecpar().sample_rate();
    tickS = av_q2d(stream.time_base());
    this.mostSamples = mostSamples;
  }

  /**
   * Returns a reader that holds only what is asked for; null if the track can't be decoded. The
   * container stays the caller's to close.
   *
   * @throws ClipException if its kind can't be decoded
   */
  static @Nullable SoundReader open(Container container, AVStream stream) throws ClipException {
    return open(container, stream, Integer.MAX_VALUE);
  }

  private static @Nullable SoundReader open(Container container, AVStream stream, int mostSamples)
      throws ClipException {
    int hz = stream.codecpar().sample_rate();
    return hz <= 0 || hz > MOST_HZ ? null : new SoundReader(container, stream, mostSamples);
  }

  /**
   * Returns the sound of a track, null if nothing in it can be decoded.
   *
   * @throws ClipException if its kind can't be decoded
   */
  static @Nullable Sound read(Container container, AVStream stream) throws ClipException {
    try (SoundReader reader = open(container, stream, MOST_SAMPLES)) {
      if (reader == null) {
        return null;
      }
      while (reader.readOn()) {
        // All of it is kept.
      }
      return reader.failed || Double.isNaN(reader.firstS)
          ? null
          : new Sound(reader.firstS, reader.rate, Arrays.copyOf(reader.samples, reader.used));
    }
  }

  /**
   * The beginning of a track.
   *
   * @param firstS time of the first sample, seconds
   * @param silent whether all of the track is silent
   */
  record Beginning(double firstS, boolean silent) {}

  /**
   * Decodes a track up to its first audible frame, all of it if it is silent; null if nothing in it
   * can be decoded.
   *
   * @throws ClipException if its kind can't be decoded
   */
  static @Nullable Beginning beginning(Container container, AVStream stream) throws ClipException {
    try (SoundReader reader = open(container, stream)) {
      if (reader == null) {
        return null;
      }
      while (!reader.audible && reader.readOn()) {
        reader.keepFrom = reader.used;
      }
      return reader.failed || Double.isNaN(reader.firstS)
          ? null
          : new Beginning(reader.firstS, !reader.audible);
    }
  }

  /** Returns the time of the first sample, seconds; not a number before anything is decoded. */
  double firstS() {
    return firstS;
  }

  int sampleRate() {
    return rate;
  }

  /**
   * Returns a stretch, as far as the track has it, valid until the next call.
   *
   * @param from first sample; what lies before it is not asked for again
   * @param to after the last
   */
  SoundTrack.Held hold(int from, int to) {
    keepFrom = Math.max(keepFrom, from);
    boolean more = true;
    while (used < to && more) {
      more = readOn();
    }
    return new SoundTrack.Held(samples, base, used, !more);
  }

  /** Decodes a frame; returns false after the last. */
  boolean readOn() {
    for (AVFrame frame = decoder.next(); frame != null; frame = decoder.next()) {
      if (frame.sample_rate() != rate) {
        continue;
      }
      // A track may change its form on the way; a mixer set up for the old one reads astray.
      int form = frame.format() * 1000 + frame.ch_layout().nb_channels();
      SwrContext mono = mixer;
      if (mono == null || form != mixedForm) {
        freeMixer();
        mixedForm = form;
        mono = monoMixer(frame, rate);
        mixer = mono;
        if (mono == null) {
          failed = true;
          return false;
        }
      }
      put(mono(mono, frame), frame.pts() == AV_NOPTS_VALUE ? Double.NaN : frame.pts() * tickS);
      return true;
    }
    return false;
  }

  private void freeMixer() {
    if (mixer != null) {
      swr_free(mixer);
      mixer = null;
    }
  }

  @Override
  public void close() {
    freeMixer();
    decoder.close();
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

  private void put(float[] more, double atS) {
    if (Double.isNaN(firstS)) {
      firstS = Double.isNaN(atS) ? 0 : atS;
    }
    audible |= !new Sound(0, rate, more).isSilent();
    long wanted = used;
    if (!Double.isNaN(atS) && Math.abs(atS - (firstS + used / (double) rate)) > FOLLOWS_ON_S) {
      wanted = Math.round((atS - firstS) * rate);
    }
    long hole = Math.max(0, wanted - used);
    if (wanted < base
        || hole > MOST_IN_HOLES_S * rate - inHoles
        || wanted + more.length > mostSamples) {
      return;
    }
    inHoles += hole;
    int end = (int) wanted + more.length;
    makeRoom(end);
    if (wanted < base) {
      return;
    }
    System.arraycopy(more, 0, samples, (int) wanted - base, more.length);
    used = Math.max(used, end);
  }

  /** Drops what is not asked for any more, and grows where that is not enough. */
  private void makeRoom(int end) {
    if (end - base <= samples.length) {
      return;
    }
    int from = Math.max(base, Math.min(keepFrom, used));
    int length = samples.length;
    if (end - from > length / 2) {
      length = Math.max(end - from, (int) Math.min(mostSamples - 8, 2L * length));
    }
    float[] moved = new float[length];
    System.arraycopy(samples, from - base, moved, 0, used - from);
    samples = moved;
    base = from;
  }
}
