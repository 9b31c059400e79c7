package palmturn.app.session;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import javafx.beans.property.SimpleObjectProperty;
import javafx.beans.property.SimpleStringProperty;
import javafx.beans.property.StringProperty;
import org.jspecify.annotations.Nullable;
import palmturn.advise.AthleteNotice;
import palmturn.app.desk.Desk;
import palmturn.app.desk.Pairing;
import palmturn.app.desk.Question;
import palmturn.app.look.NumberField;
import palmturn.store.SessionFolder;
import palmturn.trial.BodyLength;
import palmturn.trial.Hand;
import palmturn.trial.Session;

/** What the open session says of its athlete, as it is looked at and changed. */
public final class AthleteForm {
  private static final String OLD_SCALE =
      "Estimates made before keep their old scale until they are made again.";

  private final Desk desk;
  private final Map<BodyLength, StringProperty> lengths = new EnumMap<>(BodyLength.class);
  private final Map<BodyLength, ReadOnlyStringWrapper> faults = new EnumMap<>(BodyLength.class);
  private final ObjectProperty<@Nullable Hand> racketHand = new SimpleObjectProperty<>();
  private final ObjectProperty<@Nullable Boolean> consent = new SimpleObjectProperty<>();
  private final StringProperty pain = new SimpleStringProperty("");
  private final StringProperty camera = new SimpleStringProperty("");
  private final StringProperty club = new SimpleStringProperty("");
  private final ReadOnlyStringWrapper oldScale = new ReadOnlyStringWrapper("");
  private final ReadOnlyStringWrapper obstacle = new ReadOnlyStringWrapper("");
  private @Nullable SessionFolder asked;

  /** Knows nothing yet; tells the board what to heed of the athlete whose session is opened. */
  public AthleteForm(Desk desk) {
    this.desk = desk;
    for (BodyLength each : BodyLength.values()) {
      StringProperty typed = new SimpleStringProperty("");
      typed.addListener(changed -> typed(each));
      lengths.put(each, typed);
      faults.put(each, new ReadOnlyStringWrapper(""));
    }
    desk.folderProperty().addListener((folder, before, now) -> heed(now));
  }

  /** A length as it is typed, cm; empty where it is not said. */
  public StringProperty lengthProperty(BodyLength what) {
    return Objects.requireNonNull(lengths.get(what));
  }

  /** What is wrong with a length, in a few words; empty when nothing is, or it was not tried. */
  public ReadOnlyStringProperty faultProperty(BodyLength what) {
    return wrongOf(what).getReadOnlyProperty();
  }

  /** The hand that holds the racket; null where it is not said. */
  public ObjectProperty<@Nullable Hand> racketHandProperty() {
    return racketHand;
  }

  /** Whether a guardian has agreed; null where it is not said. */
  public ObjectProperty<@Nullable Boolean> consentProperty() {
    return consent;
  }

  /** Pain or injury on the day, in the athlete's words. */
  public StringProperty painProperty() {
    return pain;
  }

  /** What it was filmed with. */
  public StringProperty cameraProperty() {
    return camera;
  }

  /** Where the athlete trains. */
  public StringProperty clubProperty() {
    return club;
  }

  /** What a changed length leaves as it was, a sentence; empty where none was changed. */
  public ReadOnlyStringProperty oldScaleProperty() {
    return oldScale.getReadOnlyProperty();
  }

  /** Why it was not saved, a sentence; empty when nothing stands in the way. */
  public ReadOnlyStringProperty obstacleProperty() {
    return obstacle.getReadOnlyProperty();
  }

  /** Brings what the open session says into sight, or says that none is open. */
  public void show() {
    SessionFolder open = desk.folderProperty().get();
    if (open == null) {
      desk.fail(Pairing.NO_SESSION);
      return;
    }
    desk.stage().stop();
    asked = open;
    Session.Facts facts = open.session().facts();
    obstacle.set("");
    lengths.forEach((each, typed) -> typed.set(words(each.of(facts))));
    faults.values().forEach(each -> each.set(""));
    oldScale.set("");
    racketHand.set(facts.racketHand());
    consent.set(facts.guardianConsent());
    pain.set(words(facts.painToday()));
    camera.set(words(facts.camera()));
    club.set(words(facts.club()));
    desk.ask(new Question.Athlete());
  }

  /** Saves what was changed and closes the sheet once it is on the disk, or says why not. */
  public void save() {
    SessionFolder to = asked;
    if (to == null || desk.lookOnly()) {
      return;
    }
    Session.Facts before = to.session().facts();
    faults.forEach((each, words) -> words.set(fault(each, before)));
    if (faults.values().stream().anyMatch(each -> !each.get().isEmpty())) {
      return;
    }
    Session.Facts now = facts(before);
    if (now.equals(before)) {
      close();
      return;
    }
    obstacle.set("");
    desk.saving().keep(to, now, () -> saved(to), this::failed);
  }

  private void saved(SessionFolder to) {
    if (desk.folderProperty().get() == to) {
      heed(to);
      close();
    }
  }

  private void failed(String why) {
    if (desk.questionProperty().get() instanceof Question.Athlete) {
      obstacle.set("Not saved, what you wrote is still here: " + why);
    } else {
      desk.fail("what was changed of the athlete was not saved: " + why);
    }
  }

  private void close() {
    if (desk.questionProperty().get() instanceof Question.Athlete) {
      desk.ask(null);
    }
  }

  private void heed(@Nullable SessionFolder open) {
    desk.board().heed(open == null ? List.of() : AthleteNotice.all(open.session().facts()));
  }

  /** A length is told to be wrong when it is to be saved, and from then on until it is right. */
  private void typed(BodyLength what) {
    SessionFolder open = asked;
    if (open == null) {
      return;
    }
    Session.Facts before = open.session().facts();
    if (!wrongOf(what).get().isEmpty()) {
      wrongOf(what).set(fault(what, before));
    }
    boolean changed =
        lengths.keySet().stream()
            .anyMatch(
                each ->
                    fault(each, before).isEmpty()
                        && !Objects.equals(length(each, before), each.of(before)));
    boolean estimated = open.trials().stream().anyMatch(trial -> trial.estimate() != null);
    oldScale.set(changed && estimated ? OLD_SCALE : "");
  }

  private String fault(BodyLength what, Session.Facts before) {
    Double cm = length(what, before);
    boolean empty = lengthProperty(what).get().isBlank();
    return empty || cm != null && what.fits(cm) ? "" : "a number " + what.bounds();
  }

  private Session.Facts facts(Session.Facts before) {
    return new Session.Facts(
        racketHand.get(),
        length(BodyLength.FOREARM, before),
        length(BodyLength.HAND, before),
        length(BodyLength.STATURE, before),
        text(pain, before.painToday()),
        consent.get(),
        text(camera, before.camera()),
        text(club, before.club()));
  }

  /** What was not touched stays to the last digit. */
  private @Nullable Double length(BodyLength what, Session.Facts before) {
    String typed = lengthProperty(what).get().strip();
    Double was = what.of(before);
    return typed.equals(words(was)) ? was : NumberField.parse(typed);
  }

  private static @Nullable String text(StringProperty field, @Nullable String was) {
    String typed = field.get().strip();
    return typed.equals(words(was).strip()) ? was : typed.isEmpty() ? null : typed;
  }

  private static String words(@Nullable Double cm) {
    return cm == null ? "" : NumberField.format(cm);
  }

  private static String words(@Nullable String text) {
    return text == null ? "" : text;
  }

  private ReadOnlyStringWrapper wrongOf(BodyLength what) {
    return Objects.requireNonNull(faults.get(what));
  }
}
