package palmturn.clip;

import static org.bytedeco.ffmpeg.global.avcodec.avcodec_get_name;
import static org.bytedeco.ffmpeg.global.avutil.av_q2d;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.bytedeco.ffmpeg.avcodec.AVCodecParameters;
import org.bytedeco.ffmpeg.avformat.AVStream;
import org.jspecify.annotations.Nullable;
import palmturn.trial.ClipFacts;

/** The reader of a clip's facts and of the obstacles to scoring it. */
final class FactsReader {
  /** Over this, slaps by picture are fine enough for rhythm (docs/measures.md, timing floor). */
  private static final double RHYTHM_FPS = 100;

  /**
   * A hand turns in some five frames at 25 a second, less a rounding error (Palmturn's choice, no
   * source).
   */
  private static final double LEAST_FPS = 24.99;

  /** A hand is then some 60 pixels wide (Palmturn's choice, no source). */
  private static final int LEAST_SHORT_SIDE = 360;

  /** Mean luma of 255 under which skin and cloth run together (Palmturn's choice, no source). */
  private static final double DARK_LUMA = 40;

  private static final double SLOW_MOTION_BY = 0.05;
  private static final int SAMPLED_FRAMES = 5;

  private FactsReader() {}

  static ClipFacts read(ClipFile clip) throws ClipException {
    try (Container container = Container.open(clip.path())) {
      FrameTable frames = clip.frames();
      AVStream video = container.video();
      AVCodecParameters coded = video.codecpar();
      int rotationDeg = Rotation.clockwiseDeg(video);
      boolean sideways = rotationDeg == 90 || rotationDeg == 270;
      CaptureTags tags = CaptureTags.read(container.context(), clip.path());
      AVStream track = container.sound();
      SoundReader.Beginning sound = track == null ? null : soundOf(container, track);
      int last = frames.size() - 1;
      double durationS = frames.timeS(last) - frames.timeS(0) + frames.medianS();
      double nominalFps = av_q2d(video.r_frame_rate());
      int width = sideways ? coded.height() : coded.width();
      int height = sideways ? coded.width() : coded.height();
      return new ClipFacts(
          container.name(),
          hash(clip),
          container.context().iformat().name().getString(),
          avcodec_get_name(coded.codec_id()).getString(),
          width,
          height,
          rotationDeg,
          frames.size(),
          frames.timeS(0),
          durationS,
          nominalFps > 0 && Double.isFinite(nominalFps) ? nominalFps : null,
          durationS > 0 ? frames.size() / durationS : 0,
          frames.isVariable(),
          tags.captureFps(),
          track == null ? null : soundFacts(track, sound),
          tags.location(),
          warnings(clip, tags, Math.min(width, height), track != null, sound),
          frames.medianS(),
          tags.slowedInPart());
    }
  }

  private static String hash(ClipFile clip) throws ClipException {
    try {
      return ClipHash.sha256(clip.path());
    } catch (IOException e) {
      throw new ClipException(clip.path() + " can't be read to its end: copy it again", e);
    }
  }

  private static SoundReader.@Nullable Beginning soundOf(Container container, AVStream track) {
    try {
      return SoundReader.beginning(container, track);
    } catch (ClipException e) {
      return null;
    }
  }

  private static ClipFacts.Sound soundFacts(AVStream track, SoundReader.@Nullable Beginning sound) {
    AVCodecParameters coded = track.codecpar();
    return new ClipFacts.Sound(
        avcodec_get_name(coded.codec_id()).getString(),
        coded.sample_rate(),
        coded.ch_layout().nb_channels(),
        sound == null ? null : sound.firstS());
  }

  private static List<String> warnings(
      ClipFile clip,
      CaptureTags tags,
      int shortSide,
      boolean hasTrack,
      SoundReader.@Nullable Beginning sound) {
    List<String> warnings = new ArrayList<>();
    double fps = clip.frames().medianS() > 0 ? 1 / clip.frames().medianS() : 0;
    Double capture = tags.captureFps();
    boolean slowed =
        tags.slowedInPart()
            || capture != null && fps > 0 && Math.abs(fps / capture - 1) > SLOW_MOTION_BY;
    boolean heard = sound != null && !sound.silent() && !slowed;
    double realFps = slowed && capture != null ? capture : fps;
    if (!hasTrack) {
      warnings.add("no sound");
    } else if (sound == null) {
      warnings.add("the sound can't be decoded");
    } else if (sound.silent()) {
      warnings.add("the sound is silent throughout");
    }
    if (realFps < LEAST_FPS) {
      warnings.add(
          String.format(
              Locale.ROOT, "too few frames for flips: %.1f a second; film at 60 or more", realFps));
    } else if (realFps < RHYTHM_FPS && !heard) {
      warnings.add("rhythm is only an upper bound: under 100 frames a second and no usable sound");
    }
    if (clip.frames().isVariable()) {
      warnings.add("the frame rate varies; times are each frame's own");
    }
    if (tags.slowedInPart()) {
      warnings.add("slowed down in part: speed and rhythm can't be told; film at real speed");
    } else if (slowed) {
      warnings.add(
          String.format(
              Locale.ROOT,
              "slow motion: captured at %.0f frames a second, shown at %.1f; the sound is not used",
              capture,
              fps));
    }
    addPictureWarnings(warnings, clip, shortSide);
    if (tags.location()) {
      warnings.add("the file says where it was filmed");
    }
    return warnings;
  }

  private static void addPictureWarnings(List<String> warnings, ClipFile clip, int shortSide) {
    if (shortSide < LEAST_SHORT_SIDE) {
      warnings.add(
          String.format(
              Locale.ROOT, "the picture is small: its short side has %d pixels", shortSide));
    }
    try (FrameReader reader = clip.newReader()) {
      double luma = 0;
      int count = Math.min(SAMPLED_FRAMES, clip.frames().size());
      for (int i = 0; i < count; i++) {
        luma += meanLuma(reader.read(i * (clip.frames().size() - 1) / Math.max(1, count - 1)));
      }
      if (luma / count < DARK_LUMA) {
        warnings.add("the picture is dark: more light, or a brighter room");
      }
    } catch (ClipException e) {
      warnings.add(String.valueOf(e.getMessage()));
    }
  }

  private static double meanLuma(Picture picture) {
    double sum = 0;
    for (int pixel : picture.argb()) {
      // Rec. 601 weights: the usual grey of a colour.
      sum += 0.299 * (pixel >> 16 & 0xFF) + 0.587 * (pixel >> 8 & 0xFF) + 0.114 * (pixel & 0xFF);
    }
    return sum / picture.argb().length;
  }
}
