package palmturn.app.session;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import palmturn.clip.Progress;
import palmturn.trial.Estimate;
import palmturn.trial.Estimate.Stretch;
import palmturn.trial.UserError;
import palmturn.work.session.ClipSummary;

/** Cuts a long clip into the stretches of slapping that were detected in it. */
final class ClipCutter {
  /** A longer clip may hold several trials, seconds. */
  static final double LONG_S = 15;

  /** The margin before and after the slapping, seconds. */
  private static final double AROUND_S = 1;

  private ClipCutter() {}

  /**
   * A long clip and the candidates in it.
   *
   * @param attempts the whole clip where none was found
   * @param look pictures of the first of them: between attempts no hand moves
   */
  record CutClip(List<TrialCandidate> attempts, ClipSummary look) {
    boolean nothingFound() {
      return attempts.size() == 1 && attempts.get(0).fromS() == null;
    }
  }

  /** Detects the stretches of slapping in a long clip. */
  static CutClip cut(Path clip, ClipSummary seen, ClipProbe eyes, Progress progress)
      throws UserError {
    double firstS = seen.facts().firstS();
    double endS = firstS + seen.facts().durationS();
    List<TrialCandidate> attempts = candidates(clip, eyes.estimate(clip, progress), firstS, endS);
    TrialCandidate first = attempts.get(0);
    return new CutClip(attempts, eyes.inspect(clip, first.fromS(), first.toS()));
  }

  /** Returns whether a clip is long enough to hold several trials. */
  static boolean mayHoldSeveral(double lengthS) {
    return lengthS > LONG_S;
  }

  /**
   * Returns a candidate for each stretch of slapping, a second wider on both sides but never into
   * its neighbours; the whole clip where none was found.
   *
   * @param firstS time of the clip's first frame
   * @param endS end of its last
   */
  static List<TrialCandidate> candidates(Path clip, Estimate found, double firstS, double endS) {
    List<Stretch> bursts = found.stretches();
    if (bursts.isEmpty()) {
      return List.of(TrialCandidate.whole(clip));
    }
    List<TrialCandidate> attempts = new ArrayList<>();
    for (int i = 0; i < bursts.size(); i++) {
      double lowest = i == 0 ? firstS : middle(bursts.get(i - 1), bursts.get(i));
      double highest = i == bursts.size() - 1 ? endS : middle(bursts.get(i), bursts.get(i + 1));
      attempts.add(
          new TrialCandidate(
              clip,
              Math.max(lowest, bursts.get(i).startS() - AROUND_S),
              Math.min(highest, bursts.get(i).endS() + AROUND_S),
              true,
              null));
    }
    return List.copyOf(attempts);
  }

  private static double middle(Stretch before, Stretch after) {
    return (before.endS() + after.startS()) / 2;
  }
}
