package palmturn.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static palmturn.app.TestWindow.until;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import javafx.application.Platform;
import javafx.scene.input.KeyCode;
import javafx.stage.Stage;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.condition.EnabledIf;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.testfx.api.FxRobot;
import org.testfx.framework.junit5.ApplicationExtension;
import org.testfx.framework.junit5.Start;
import org.testfx.util.WaitForAsyncUtils;
import palmturn.app.desk.Desk;
import palmturn.app.marking.MarkPass;
import palmturn.clip.Progress;
import palmturn.store.SessionFolder;
import palmturn.trial.Coded;
import palmturn.trial.DrillHand;
import palmturn.trial.Mirrored;
import palmturn.trial.Reading;
import palmturn.trial.Session;
import palmturn.trial.Side;
import palmturn.trial.Slap;
import palmturn.trial.TrialId;
import palmturn.trial.Zone;
import palmturn.work.estimate.Estimating;
import palmturn.work.session.AddClip;
import palmturn.work.session.DrillTime;
import palmturn.work.session.Notes;
import palmturn.work.session.Sessions;

/**
 * Scores whole bundled clips from their own estimates by key events alone. The hand that presses
 * the keys knows the truth of the drawn clip, as a reader knows what is on the picture.
 */
@EnabledIf(
    value = "palmturn.app.PalmturnAppTest#textCanBeDrawn",
    disabledReason = "Pango is not installed")
@ExtendWith(ApplicationExtension.class)
class ScoringByKeysTest {
  private static final Path CLIPS = Path.of("sample-clips-synthetic");
  private static final double SAME_S = 0.025;

  static {
    System.setProperty("headless.geometry", "1600x1000-32");
  }

  @TempDir private static Path folder;

  private TestWindow opened;
  private Desk desk;
  private int pressed;

  /** All twelve can be asked for; two with doubles are enough for every build. */
  static List<String> trials() {
    return List.of(
        System.getProperty("palmturn.keys.trials", "right-baseline-1,left-baseline-1").split(","));
  }

  @Start
  void start(Stage window) {
    opened = TestWindow.withEstimator();
    desk = opened.show(window);
  }

  @AfterEach
  void close() {
    opened.close();
  }

  @ParameterizedTest
  @MethodSource("trials")
  void estimateBecomesTheTruthWithTwoKeysASlapAtMost(String name, FxRobot robot) throws Exception {
    TrialId id = TrialId.parse(name);
    List<Slap> truth = truth(id);
    Path session = session(id, true);
    Platform.runLater(() -> desk.opener().open(session));
    until(30, () -> robot.lookup("#initials").tryQuery().isPresent());
    robot.write("AK").type(KeyCode.ENTER);
    until(30, () -> desk.stage().pictureProperty().get() != null);

    press(robot, KeyCode.S);
    until(30, () -> place() != null);
    long began = System.nanoTime();
    int times = 0;
    int zones = 0;
    while (place() != null) {
      Slap seen = desk.marking().slapProperty().get();
      if (place().topic() == MarkPass.Topic.TIMES) {
        times++;
        time(robot, seen, truth);
      } else {
        zones++;
        zone(robot, seen, real(seen, truth));
      }
      WaitForAsyncUtils.waitForFxEvents();
    }
    double tookS = (System.nanoTime() - began) / 1e9;
    press(robot, KeyCode.ENTER);
    WaitForAsyncUtils.waitForFxEvents();

    Reading read = desk.marking().readingProperty().get();
    assertTrue(read.finished());
    assertTrue(read.estimateSeen());
    assertEquals(
        truth.stream().map(Slap::kind).toList(), read.slaps().stream().map(Slap::kind).toList());
    assertEquals(
        truth.stream().map(Slap::side).toList(), read.slaps().stream().map(Slap::side).toList());
    assertEquals(
        truth.stream().map(Slap::zone).toList(), read.slaps().stream().map(Slap::zone).toList());
    for (int i = 0; i < truth.size(); i++) {
      assertEquals(truth.get(i).timeS(), read.slaps().get(i).timeS(), SAME_S);
    }
    assertTrue(pressed <= 2 * truth.size(), pressed + " keys for " + truth.size() + " slaps");
    System.out.printf(
        Locale.ROOT,
        "%s: %d slaps, %d doubtful, %d in the zone pass, %d keys, %.2f a slap, %.1f s by a robot%n",
        name,
        truth.size(),
        times,
        zones,
        pressed,
        (double) pressed / truth.size(),
        tookS);
  }

  /** Keys come 120 ms late of the wall clock, give or take 40, like those of a person's finger. */
  @ParameterizedTest
  @MethodSource("typed")
  void typedAlongFromNothingBecomesTheTruth(String name, FxRobot robot) throws Exception {
    TrialId id = TrialId.parse(name);
    List<Slap> truth = truth(id);
    Path session = session(id, false);
    Platform.runLater(() -> desk.opener().open(session));
    until(30, () -> desk.stage().pictureProperty().get() != null);
    robot.type(KeyCode.F);
    until(30, () -> robot.lookup("#initials").tryQuery().isPresent());
    robot.write("AK").type(KeyCode.ENTER);
    robot.type(KeyCode.Z, KeyCode.HOME);
    WaitForAsyncUtils.waitForFxEvents();

    Random random = new Random(7);
    double slow = 0.25;
    long began = System.nanoTime();
    press(robot, KeyCode.T);
    for (Slap slap : truth) {
      double lateS = slow * (0.12 + 0.04 * (2 * random.nextDouble() - 1));
      until(
          () ->
              desk.stage().timeS() >= slap.timeS() + lateS
                  || !desk.stage().playingProperty().get());
      press(robot, key(slap.side()));
    }
    press(robot, KeyCode.T);
    until(30, () -> !desk.fast().typing().activeProperty().get());
    double typedS = (System.nanoTime() - began) / 1e9;
    String settled = desk.marking().stepProperty().get();

    press(robot, KeyCode.C);
    int moved = 0;
    while (place() != null) {
      Slap seen = desk.marking().slapProperty().get();
      // One key was typed for each, so that they are the same in order.
      Slap real = truth.get(desk.marking().readingProperty().get().slaps().indexOf(seen));
      double away = real.timeS() - seen.timeS();
      if (Math.abs(away) > SAME_S) {
        moved++;
        for (int i = 0; i < Math.round(Math.abs(away) * 60); i++) {
          press(robot, away > 0 ? KeyCode.RIGHT : KeyCode.LEFT);
        }
        WaitForAsyncUtils.waitForFxEvents();
      }
      zone(robot, desk.marking().slapProperty().get(), real);
      WaitForAsyncUtils.waitForFxEvents();
    }
    press(robot, KeyCode.ENTER);
    WaitForAsyncUtils.waitForFxEvents();
    Reading read = desk.marking().readingProperty().get();
    System.out.printf(
        Locale.ROOT,
        "%s from nothing: %d slaps; %s; %d moved by hand; %d keys, %.2f a slap; typed in %.1f s%n",
        name,
        truth.size(),
        settled,
        moved,
        pressed,
        (double) pressed / truth.size(),
        typedS);
    assertTrue(read.finished());
    assertEquals(
        truth.stream().map(Slap::kind).toList(), read.slaps().stream().map(Slap::kind).toList());
    assertEquals(
        truth.stream().map(Slap::side).toList(), read.slaps().stream().map(Slap::side).toList());
    assertEquals(
        truth.stream().map(Slap::zone).toList(), read.slaps().stream().map(Slap::zone).toList());
    for (int i = 0; i < truth.size(); i++) {
      assertEquals(truth.get(i).timeS(), read.slaps().get(i).timeS(), SAME_S);
    }
  }

  /** All twelve can be asked for; one is enough for every build. */
  static List<String> typed() {
    return List.of(System.getProperty("palmturn.keys.typed", "right-baseline-1").split(","));
  }

  private void time(FxRobot robot, Slap seen, List<Slap> truth) {
    Slap real = real(seen, truth);
    if (Math.abs(real.timeS() - seen.timeS()) > SAME_S) {
      press(robot, KeyCode.DELETE);
    } else if ((real.kind() == Slap.Kind.DOUBLE) != (seen.kind() == Slap.Kind.DOUBLE)) {
      press(robot, KeyCode.DIGIT4);
    } else if (real.side() != seen.side()) {
      press(robot, key(real.side()));
    } else {
      press(robot, KeyCode.SPACE);
    }
  }

  private void zone(FxRobot robot, Slap seen, Slap real) {
    if (real.side() != seen.side()) {
      press(robot, key(real.side()));
    }
    if (real.kind() == Slap.Kind.PART_TURN) {
      press(robot, KeyCode.P);
    } else if ((real.kind() == Slap.Kind.DOUBLE) != (seen.kind() == Slap.Kind.DOUBLE)) {
      press(robot, KeyCode.DIGIT4);
    } else {
      press(
          robot,
          switch (real.zone()) {
            case FINGERS -> KeyCode.DIGIT1;
            case WRIST -> KeyCode.DIGIT2;
            case EDGE -> KeyCode.DIGIT3;
            case CENTRE, UNKNOWN -> KeyCode.SPACE;
          });
    }
  }

  private static KeyCode key(Side side) {
    return side == Side.PALM ? KeyCode.F : KeyCode.J;
  }

  private static Slap real(Slap seen, List<Slap> truth) {
    return truth.stream()
        .min(Comparator.comparingDouble(each -> Math.abs(each.timeS() - seen.timeS())))
        .orElseThrow();
  }

  private void press(FxRobot robot, KeyCode key) {
    pressed++;
    robot.type(key);
  }

  private MarkPass.Position place() {
    return desk.fast().pass().positionProperty().get();
  }

  private static List<Slap> truth(TrialId id) throws Exception {
    List<Slap> slaps = new ArrayList<>();
    for (JsonNode contact :
        new ObjectMapper()
            .readTree(CLIPS.resolve(id.name() + ".truth.json").toFile())
            .get("contacts")) {
      slaps.add(
          Slap.onFrame(
              Coded.parse(Slap.Kind.class, contact.get("kind").textValue()),
              contact.get("timeS").doubleValue(),
              1 / 60.0,
              Coded.parse(Side.class, contact.get("side").textValue()),
              Coded.parse(Zone.class, contact.get("zone").textValue())));
    }
    return slaps;
  }

  private static Path session(TrialId id, boolean estimated) throws Exception {
    Path where = folder.resolve(id.name() + (estimated ? "" : "-typed"));
    try (SessionFolder made =
        Sessions.create(where, "H-07", LocalDate.of(2026, 11, 14), Session.Facts.NONE)) {
      if (!id.block().equals("baseline")) {
        Notes.drill(
            made, id.block(), "paced-flips", DrillHand.LEFT, "twenty slaps", DrillTime.UNKNOWN);
      }
      AddClip.add(
          made,
          CLIPS.resolve(id.name() + ".mp4"),
          new AddClip.ClipRequest(
              id.hand(), id.block(), id.repeat(), null, null, Mirrored.FALSE, null, null));
      if (estimated) {
        Estimating.standard().trial(made, id, Estimating.Options.ALL, Progress.NONE);
      }
    }
    return where;
  }
}
