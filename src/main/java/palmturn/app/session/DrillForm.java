package palmturn.app.session;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import javafx.beans.property.SimpleObjectProperty;
import javafx.beans.property.SimpleStringProperty;
import javafx.beans.property.StringProperty;
import org.jspecify.annotations.Nullable;
import palmturn.advise.DrillAim;
import palmturn.advise.DrillLibrary;
import palmturn.advise.LibraryDrill;
import palmturn.advise.TrainedHand;
import palmturn.app.look.Sentence;
import palmturn.trial.Drill;
import palmturn.trial.DrillHand;

/** The drill before a new block, as it is being typed, and the drills of the library that fit. */
public final class DrillForm {
  private final StringProperty name = new SimpleStringProperty("");
  private final StringProperty dose = new SimpleStringProperty("");
  private final StringProperty start = new SimpleStringProperty("");
  private final StringProperty end = new SimpleStringProperty("");
  private final ObjectProperty<@Nullable DrillHand> hand = new SimpleObjectProperty<>();
  private final ReadOnlyObjectWrapper<List<DrillChoice>> offers =
      new ReadOnlyObjectWrapper<>(List.of());
  private final ReadOnlyObjectWrapper<@Nullable DrillChoice> named = new ReadOnlyObjectWrapper<>();
  private final ReadOnlyStringWrapper obstacle = new ReadOnlyStringWrapper("");
  private List<DrillChoice> all = List.of(DrillChoice.REST);
  private String offeredDose = "";
  private boolean choosing;

  /**
   * A drill to choose.
   *
   * @param code as a block has it
   * @param drill as the library has it; null for a rest
   */
  public record DrillChoice(String code, String name, @Nullable LibraryDrill drill) {
    static final DrillChoice REST = new DrillChoice(Drill.REST, Drill.REST, null);

    /** Returns its aims, in a few words. */
    public String aims() {
      return drill == null
          ? "nothing trained"
          : drill.aims().stream().map(DrillAim::code).collect(Collectors.joining(", "));
    }

    private boolean fits(String typed) {
      String words = spaced(code + " " + name + " " + aims());
      return Arrays.stream(spaced(typed).split(" ")).allMatch(words::contains);
    }

    private boolean isNamed(String typed) {
      String said = spaced(typed);
      return said.equals(spaced(code)) || said.equals(spaced(name));
    }
  }

  /** Starts with nothing said and only a rest to choose. */
  public DrillForm() {
    name.addListener((words, before, now) -> typed());
    typed();
  }

  /** The drill in words: one of the library, or one's own. */
  public StringProperty nameProperty() {
    return name;
  }

  /** The dose, in one's own words. */
  public StringProperty doseProperty() {
    return dose;
  }

  /** The time at which it began, as {@link palmturn.work.session.DrillTime} reads it. */
  public StringProperty startProperty() {
    return start;
  }

  /** The time at which it ended. */
  public StringProperty endProperty() {
    return end;
  }

  /** The hand it trained; null until one is chosen. */
  public ObjectProperty<@Nullable DrillHand> handProperty() {
    return hand;
  }

  /** The drills that fit what was typed. */
  public ReadOnlyObjectProperty<List<DrillChoice>> offersProperty() {
    return offers.getReadOnlyProperty();
  }

  /** The drill that the words name; null where they name none that is offered. */
  public ReadOnlyObjectProperty<@Nullable DrillChoice> namedProperty() {
    return named.getReadOnlyProperty();
  }

  /** The obstacle to beginning the block, a sentence; empty where there is none. */
  public ReadOnlyStringProperty obstacleProperty() {
    return obstacle.getReadOnlyProperty();
  }

  /** Shows an obstacle. */
  public void setObstacle(String what) {
    obstacle.set(Sentence.of(what));
  }

  /** Offers the drills of a library, and a rest. */
  public void offer(DrillLibrary library) {
    List<DrillChoice> more = new ArrayList<>();
    library.drills().forEach(drill -> more.add(new DrillChoice(drill.code(), drill.name(), drill)));
    more.add(DrillChoice.REST);
    all = List.copyOf(more);
    typed();
  }

  /** Takes an offer; the dose goes with it unless one was written. */
  public void choose(DrillChoice offer) {
    choosing = true;
    name.set(offer.name());
    choosing = false;
    LibraryDrill drill = offer.drill();
    if (dose.get().isBlank() || dose.get().equals(offeredDose)) {
      offeredDose = drill == null ? "" : drill.dose();
      dose.set(offeredDose);
    }
    if (drill == null) {
      hand.set(DrillHand.NONE);
    } else if (drill.trains() != TrainedHand.ONE) {
      hand.set(drill.trains().forAdvice(DrillHand.NONE));
    } else if (hand.get() == DrillHand.NONE || hand.get() == DrillHand.BOTH) {
      hand.set(null);
    }
  }

  /** Takes the next of the offers, or the one before it. */
  public void move(int by) {
    List<DrillChoice> shown = offers.get();
    if (!shown.isEmpty()) {
      int now = shown.indexOf(named.get());
      int next = now < 0 ? (by > 0 ? 0 : shown.size() - 1) : now + by;
      choose(shown.get(Math.max(0, Math.min(shown.size() - 1, next))));
    }
  }

  /** Returns the code that the block gets. */
  String code() {
    DrillChoice known = named.get();
    return known != null
        ? known.code()
        : name.get().strip().toLowerCase(Locale.ROOT).replaceAll("\\s+", "-");
  }

  private void typed() {
    if (!choosing) {
      offers.set(all.stream().filter(offer -> offer.fits(name.get())).toList());
    }
    named.set(all.stream().filter(offer -> offer.isNamed(name.get())).findFirst().orElse(null));
  }

  private static String spaced(String words) {
    return words.strip().toLowerCase(Locale.ROOT).replaceAll("[-\\s]+", " ");
  }
}
