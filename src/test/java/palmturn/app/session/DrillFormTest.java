package palmturn.app.session;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import palmturn.app.session.DrillForm.DrillChoice;
import palmturn.trial.DrillHand;
import palmturn.work.score.Drills;

class DrillFormTest {
  @TempDir private Path settings;
  private final DrillForm asked = new DrillForm();

  @BeforeEach
  void offerTheProgramsOwn() throws Exception {
    asked.offer(Drills.library(settings, null));
  }

  @Test
  void typingLeavesTheDrillsThatFitByNameOrAim() {
    asked.nameProperty().set("Paced ");
    assertEquals(List.of("paced-flips", "paced-breathing", "long-paced-sets"), codes());
    asked.nameProperty().set("endurance");
    assertEquals(List.of("long-paced-sets"), codes());
    asked.nameProperty().set("");
    assertEquals("rest", codes().get(codes().size() - 1));
  }

  @Test
  void choosingFillsTheDoseButKeepsOneThatWasWritten() {
    asked.nameProperty().set("flips");
    asked.move(1);
    assertEquals("paced-flips", asked.code());
    assertEquals(
        "5 sets of 20 slaps, a minute of rest between; 4 days a week.", asked.doseProperty().get());
    asked.move(1);
    assertEquals("towel-flips", asked.code());
    assertEquals(List.of("paced-flips", "towel-flips"), codes());
    assertEquals(asked.namedProperty().get().drill().dose(), asked.doseProperty().get());
    asked.doseProperty().set("ten minutes");
    asked.move(-1);
    assertEquals("paced-flips", asked.code());
    assertEquals("ten minutes", asked.doseProperty().get());
  }

  @Test
  void whatTrainsNoOneHandSaysSo() {
    choose("head-turns");
    assertEquals(DrillHand.NONE, asked.handProperty().get());
    choose("paced-flips");
    assertNull(asked.handProperty().get());
    asked.handProperty().set(DrillHand.LEFT);
    choose("racket-eights");
    assertEquals(DrillHand.LEFT, asked.handProperty().get());
    choose("rest");
    assertEquals(DrillHand.NONE, asked.handProperty().get());
  }

  @Test
  void aDrillOfOnesOwnGetsACodeOfItsWords() {
    asked.nameProperty().set(" Wall  rallies ");
    assertEquals("wall-rallies", asked.code());
    assertNull(asked.namedProperty().get());
    asked.nameProperty().set("Head turns with the gaze held");
    assertEquals("head-turns", asked.code());
  }

  private void choose(String code) {
    asked.nameProperty().set("");
    asked.choose(
        asked.offersProperty().get().stream()
            .filter(offer -> offer.code().equals(code))
            .findFirst()
            .orElseThrow());
  }

  private List<String> codes() {
    return asked.offersProperty().get().stream().map(DrillChoice::code).toList();
  }
}
