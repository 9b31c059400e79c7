package palmturn.app;

import palmturn.app.keys.Action;
import palmturn.app.keys.Where;
import palmturn.app.marking.Marking;
import palmturn.app.stage.Stage;
import palmturn.app.strip.Strip;

/** The keys that go through the frames and slaps of the trial on the stage. */
final class TrialKeys {
  private static final int TEN = 10;

  private final Marking marking;
  private final Stage stage;
  private final Strip strip;
  private final Runnable redrawStrip;
  private final Commands commands;

  TrialKeys(Marking marking, Stage stage, Strip strip, Runnable redrawStrip, Commands commands) {
    this.marking = marking;
    this.stage = stage;
    this.strip = strip;
    this.redrawStrip = redrawStrip;
    this.commands = commands;
    bind(Action.FRAME_BACK, () -> stage.step(-1));
    bind(Action.FRAME_ON, () -> stage.step(1));
    bind(Action.TEN_BACK, () -> stage.step(-TEN));
    bind(Action.TEN_ON, () -> stage.step(TEN));
    bind(Action.SLAP_BEFORE, () -> seekNeighbour(false));
    bind(Action.SLAP_NEXT, () -> seekNeighbour(true));
    bind(Action.FIRST, stage::goToStart);
    bind(Action.LAST, stage::goToEnd);
    bind(Action.PLAY, stage::playOrStop);
    commands.bind(Action.SLOWER, stage::slower);
    commands.bind(Action.FASTER, stage::faster);
    commands.bind(Action.CLOSER, () -> zoom(true));
    commands.bind(Action.WIDER, () -> zoom(false));
  }

  private void bind(Action action, Runnable command) {
    commands.bind(Where.TRIAL, action, command);
  }

  private void seekNeighbour(boolean forward) {
    marking.neighbourFrame(stage.frameProperty().get(), forward).ifPresent(stage::seek);
  }

  private void zoom(boolean closer) {
    strip.zoomStep(closer);
    redrawStrip.run();
  }
}
