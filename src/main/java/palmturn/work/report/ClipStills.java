package palmturn.work.report;

import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import palmturn.clip.ClipException;
import palmturn.clip.ClipFile;
import palmturn.clip.FrameReader;
import palmturn.film.Stills;
import palmturn.report.ReportInput;
import palmturn.trial.TrialId;

/** Takes pictures out of a session's clips, keeping one clip open at a time. */
final class ClipStills implements ReportInput.Stills, AutoCloseable {
  private static final int WIDTH = 480;

  private final Map<TrialId, ClipFile> clips = new HashMap<>();
  private @Nullable Path open;
  private @Nullable FrameReader reader;

  /** Says which clip a trial was filmed in. */
  void add(TrialId trial, ClipFile clip) {
    clips.put(trial, clip);
  }

  @Override
  public byte @Nullable [] jpeg(TrialId trial, double timeS) {
    ClipFile clip = clips.get(trial);
    if (clip == null) {
      return null;
    }
    try {
      return Stills.jpeg(readerOf(clip).read(clip.frames().nearest(timeS)), WIDTH);
    } catch (ClipException e) {
      // The page shows the fault without its picture.
      return null;
    }
  }

  private FrameReader readerOf(ClipFile clip) throws ClipException {
    if (reader == null || !clip.path().equals(open)) {
      close();
      reader = clip.newReader();
      open = clip.path();
    }
    return reader;
  }

  @Override
  public void close() {
    if (reader != null) {
      reader.close();
      reader = null;
    }
  }
}
