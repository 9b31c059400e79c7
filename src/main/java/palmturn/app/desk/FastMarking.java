package palmturn.app.desk;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import palmturn.app.marking.ContactEvidence;
import palmturn.app.marking.MarkPass;
import palmturn.app.marking.Marking;
import palmturn.app.marking.Typing;
import palmturn.app.stage.Stage;
import palmturn.app.strip.Strip;
import palmturn.clip.FrameTable;
import palmturn.clip.Sound;
import palmturn.estimate.sound.SlapSounds;
import palmturn.trial.Estimate;
import palmturn.trial.EstimatedSlap;
import palmturn.trial.Reading;
import palmturn.trial.Slap;
import palmturn.trial.TimeScale;
import palmturn.trial.Trial;

/** The two fast ways to mark: typing along, and going through marks one by one. */
public final class FastMarking {
  private static final double LOOP_S = 0.15;
  private static final double OF_INTERVAL = 0.45;

  /** An onset nearer to a contact than this is the contact's own. */
  private static final double SAME_S = 0.03;

  private final Desk desk;
  private final Marking marking;
  private final Stage stage;
  private final Strip strip;
  private final Typing typing;
  private final MarkPass pass;

  FastMarking(Desk desk) {
    this.desk = desk;
    marking = desk.marking();
    stage = desk.stage();
    strip = desk.strip();
    typing = new Typing(stage, marking, evidences(), strip.animation()::start);
    typing.activeProperty().addListener((active, before, now) -> strip.setTyping(now));
    pass =
        new MarkPass(
            marking,
            new MarkPass.Display() {
              @Override
              public void loop(Slap slap, MarkPass.Topic about) {
                show(slap, about);
              }

              @Override
              public void stopAt(@Nullable Slap slap) {
                stop(slap);
              }
            });
    // Who clicks elsewhere or steps has left the slap that the keys are about.
    stage
        .playingProperty()
        .addListener(
            (playing, before, now) -> {
              if (!now) {
                pass.leave();
              }
            });
  }

  /** Typing along. */
  public Typing typing() {
    return typing;
  }

  /** Going through the marks. */
  public MarkPass pass() {
    return pass;
  }

  /** Plays slowly and takes keys for rough marks; again: stops, and they settle. */
  public void type() {
    if (typing.activeProperty().get()) {
      typing.stop();
    } else {
      desk.mark(() -> typing.begin(scale()));
    }
  }

  /** Goes through the marks, from the first that is still to be looked at. */
  public void goThrough() {
    desk.mark(
        () -> {
          Reading now = marking.readingProperty().get();
          if (now == null || now.slaps().isEmpty()) {
            desk.fail("there are no marks to go through yet");
          } else {
            pass.begin(desk.estimation().found().visibleProperty().getValue());
          }
        });
  }

  private TimeScale scale() {
    Trial trial = desk.openTrial();
    return trial == null ? TimeScale.REAL : trial.timeScale();
  }

  private void show(Slap slap, MarkPass.Topic about) {
    double[] halves = halves(slap);
    strip.showClose(slap.timeS(), about == MarkPass.Topic.TIMES ? Strip.CLOSE : Strip.TYPING);
    stage.loop(slap.timeS() - halves[0], slap.timeS() + halves[1]);
  }

  /** How much is played before and after a slap, media seconds: never as far as the next one. */
  private double[] halves(Slap slap) {
    double most = LOOP_S / scale().factorAt(slap.timeS());
    double before = most;
    double after = most;
    Reading now = marking.readingProperty().get();
    for (Slap other : now == null ? List.<Slap>of() : now.slaps()) {
      double away = other.timeS() - slap.timeS();
      if (away < 0) {
        before = Math.min(before, -OF_INTERVAL * away);
      } else if (away > 0) {
        after = Math.min(after, OF_INTERVAL * away);
      }
    }
    FrameTable frames = stage.framesProperty().get();
    double least = frames == null ? 0 : 2 * frames.medianS();
    return new double[] {Math.max(before, least), Math.max(after, least)};
  }

  private void stop(@Nullable Slap slap) {
    FrameTable frames = stage.framesProperty().get();
    if (slap != null && frames != null) {
      stage.seek(frames.nearest(slap.timeS()));
      marking.chooseSlap(slap);
    }
    strip.showWhole();
  }

  private Typing.EvidenceSource evidences() {
    return new Typing.EvidenceSource() {
      @Override
      public List<ContactEvidence> between(double fromS, double toS) {
        return evidence(fromS, toS);
      }

      @Override
      public String assumption() {
        boolean heard = desk.soundProperty().get() != null && scale().equals(TimeScale.REAL);
        boolean estimated = desk.estimation().found().estimateProperty().get() != null;
        return heard && !estimated
            ? "the sound is taken to be in step with the picture, since nothing is estimated"
            : "";
      }
    };
  }

  /** What a typed mark may settle on: onsets, contacts of the estimate if it may be seen. */
  private List<ContactEvidence> evidence(double fromS, double toS) {
    Estimate shown = desk.estimation().found().visibleProperty().getValue();
    List<ContactEvidence> all = new ArrayList<>();
    if (shown != null) {
      for (EstimatedSlap found : shown.slaps()) {
        if (found.timeS() >= fromS && found.timeS() <= toS) {
          all.add(ContactEvidence.of(found));
        }
      }
    }
    List<ContactEvidence> contacts = List.copyOf(all);
    Sound sound = desk.soundProperty().get();
    Estimate made = desk.estimation().found().estimateProperty().get();
    boolean setAside = made != null && made.soundOffsetS() == null;
    // The sound of a stretched clip tells nothing about its slaps.
    if (sound != null && !setAside && scale().equals(TimeScale.REAL)) {
      double offsetS = strip.soundOffsetS();
      for (double onsetS : SlapSounds.clearS(sound, fromS + offsetS, toS + offsetS)) {
        ContactEvidence heard = ContactEvidence.heard(onsetS, offsetS, Slap.SOUND_SD_S);
        if (contacts.stream().noneMatch(c -> Math.abs(c.timeS() - heard.timeS()) < SAME_S)) {
          all.add(heard);
        }
      }
    }
    return all;
  }
}
