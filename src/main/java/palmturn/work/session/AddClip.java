package palmturn.work.session;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import palmturn.clip.ClipFile;
import palmturn.store.SessionFolder;
import palmturn.trial.Block;
import palmturn.trial.ClipFacts;
import palmturn.trial.ClipRef;
import palmturn.trial.Extra;
import palmturn.trial.Hand;
import palmturn.trial.Mirrored;
import palmturn.trial.Session;
import palmturn.trial.TimeScale;
import palmturn.trial.Trial;
import palmturn.trial.TrialId;
import palmturn.trial.UserError;

/** Adds a clip, or a stretch of one, to a session as a trial. */
public final class AddClip {
  private AddClip() {}

  /**
   * The description of a clip to add.
   *
   * @param hand the moving hand
   * @param block baseline or after-N
   * @param repeat which attempt; null for the next free one
   * @param fromS start of the stretch, media seconds; null for the clip's start
   * @param toS end of the stretch, media seconds; null for the clip's end
   * @param mirrored whether the file shows the athlete mirrored
   * @param paceSlapsPerS the click track it was filmed to, if to one
   * @param captureFps frames a second at capture, where the file does not say
   */
  public record ClipRequest(
      Hand hand,
      String block,
      @Nullable Integer repeat,
      @Nullable Double fromS,
      @Nullable Double toS,
      Mirrored mirrored,
      @Nullable Double paceSlapsPerS,
      @Nullable Double captureFps) {

    /** Returns a request with nothing said but the hand and the block. */
    public static ClipRequest of(Hand hand, String block) {
      return new ClipRequest(hand, block, null, null, null, Mirrored.UNKNOWN, null, null);
    }
  }

  /**
   * A clip that was added.
   *
   * @param trial the new trial
   * @param facts of its clip, with the warnings about its fitness
   */
  public record Added(Trial trial, ClipFacts facts) {}

  /** Copies the clip into the session, unless it is there already, and adds the trial. */
  public static Added add(SessionFolder folder, Path source, ClipRequest request) throws UserError {
    try {
      ClipFile clip = ClipFile.open(source);
      ClipFacts facts = clip.facts();
      checkStretch(facts, request.fromS());
      TrialId id = freeId(folder, request);
      ClipRef ref =
          new ClipRef(folder.importClip(source), facts.sha256(), facts.medianFrameS(), Extra.NONE);
      Double captureFps = request.captureFps() != null ? request.captureFps() : facts.captureFps();
      Trial trial =
          new Trial(
              id,
              ref,
              request.fromS(),
              request.toS(),
              request.mirrored(),
              captureFps,
              timeScale(facts, captureFps),
              request.paceSlapsPerS(),
              null,
              List.of(),
              null,
              Extra.NONE);
      folder.save(trial);
      folder.change(session -> withTrial(session, id));
      return new Added(trial, facts);
    } catch (IllegalArgumentException e) {
      throw new UserError(source.getFileName() + ": " + e.getMessage(), e);
    }
  }

  /** Returns how a clip's media seconds become real ones. */
  public static TimeScale timeScale(ClipFacts facts, @Nullable Double captureFps) {
    if (facts.slowedInPart()) {
      return TimeScale.refused("the clip is slowed in part, and does not say where");
    }
    return captureFps == null
        ? TimeScale.REAL
        : TimeScale.ofCapture(facts.medianFrameS(), captureFps);
  }

  /** Refuses a stretch that begins after the clip has ended. */
  public static void checkStretch(ClipFacts facts, @Nullable Double fromS) throws UserError {
    double endS = facts.firstS() + facts.durationS();
    if (fromS != null && fromS >= endS) {
      throw new UserError(
          String.format(
              Locale.ROOT,
              "%s ends at %.3f s, before the trial's start at %.3f s",
              facts.clip(),
              endS,
              fromS));
    }
  }

  private static TrialId freeId(SessionFolder folder, ClipRequest request) throws UserError {
    List<TrialId> there = new ArrayList<>(folder.damaged().keySet());
    folder.trials().forEach(each -> there.add(each.id()));
    if (request.repeat() != null) {
      TrialId asked = new TrialId(request.hand(), request.block(), request.repeat());
      if (there.contains(asked)) {
        throw new UserError(
            "%s is there already in %s: choose another repeat"
                .formatted(asked.name(), folder.folder().getFileName()));
      }
      return asked;
    }
    int repeat = 1;
    while (there.contains(new TrialId(request.hand(), request.block(), repeat))) {
      repeat++;
    }
    return new TrialId(request.hand(), request.block(), repeat);
  }

  private static Session withTrial(Session session, TrialId id) {
    List<TrialId> filmed = new ArrayList<>(session.filmed());
    filmed.add(id);
    Session more = session.withFilmed(filmed);
    return more.block(id.block()).isPresent()
        ? more
        : withBlock(more, new Block(id.block(), null, Extra.NONE));
  }

  /** Returns the session with a block put in its place, replacing one of the same name. */
  static Session withBlock(Session session, Block block) {
    List<Block> blocks = new ArrayList<>(session.blocks());
    blocks.removeIf(each -> each.name().equals(block.name()));
    blocks.add(block);
    blocks.sort(Comparator.comparingInt(each -> Block.order(each.name())));
    return session.withBlocks(blocks);
  }
}
