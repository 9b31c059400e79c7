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
import palmturn.app.board.Board;
import palmturn.app.desk.OpenSession;
import palmturn.app.desk.Prompts;
import palmturn.app.desk.Question;
import palmturn.app.look.NumberField;
import palmturn.app.stage.Stage;
import palmturn.store.SessionFolder;
import palmturn.trial.BodyLength;
import palmturn.trial.Hand;
import palmturn.trial.Session;

/** The facts about the open session's athlete, as they are looked at and changed. */
public final class AthleteForm {
  private static final String OLD_SCALE =
      "Estimates made before keep their old scale until they are made again.";

  private static final Question SHEET = Question.Page.ATHLETE;

  private final OpenSession session;
  private final Stage stage;
  private final Board board;
  private final Prompts prompts;
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

  /** Knows nothing yet; shows the cautions about each athlete on the board. */
  public AthleteForm(OpenSession session, Stage stage, Board board, Prompts prompts) {
    this.session = session;
    this.stage = stage;
    this.board = board;
    this.prompts = prompts;
    for (BodyLength each : BodyLength.values()) {
      StringProperty typed = new SimpleStringProperty("");
      typed.addListener(changed -> typed(each));
      lengths.put(each, typed);
      faults.put(each, new ReadOnlyStringWrapper(""));
    }
    session.folderProperty().addListener((folder, before, now) -> heed(now));
  }

  /** A length as it is typed, cm; empty where it is unknown. */
  public StringProperty lengthProperty(BodyLength what) {
    return Objects.requireNonNull(lengths.get(what));
  }

  /** The fault of a length, in a few words; empty where there is none, or it was not tried. */
  public ReadOnlyStringProperty faultProperty(BodyLength what) {
    return wrongOf(what).getReadOnlyProperty();
  }

  /** The hand that holds the racket; null where it is unknown. */
  public ObjectProperty<@Nullable Hand> racketHandProperty() {
    return racketHand;
  }

  /** A guardian's consent; null where it is unknown. */
  public ObjectProperty<@Nullable Boolean> consentProperty() {
    return consent;
  }

  /** Pain or injury on the day, in the athlete's words. */
  public StringProperty painProperty() {
    return pain;
  }

  /** The camera. */
  public StringProperty cameraProperty() {
    return camera;
  }

  /** The athlete's club. */
  public StringProperty clubProperty() {
    return club;
  }

  /** A warning about estimates in the old scale; empty where no length was changed. */
  public ReadOnlyStringProperty oldScaleProperty() {
    return oldScale.getReadOnlyProperty();
  }

  /** The obstacle to saving, a sentence; empty where there is none. */
  public ReadOnlyStringProperty obstacleProperty() {
    return obstacle.getReadOnlyProperty();
  }

  /** Shows the facts of the open session, or gives notice that none is open. */
  public void show() {
    SessionFolder open = session.folder();
    if (open == null) {
      prompts.notices().warn(OpenSession.NONE);
      return;
    }
    stage.stop();
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
    prompts.questions().ask(SHEET);
  }

  /** Saves what was changed, and closes the sheet once it is on the disk. */
  public void save() {
    SessionFolder to = asked;
    if (to == null || session.refusesEdits()) {
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
    session.saving().keep(to, now, () -> saved(to), this::failed);
  }

  private void saved(SessionFolder to) {
    if (session.folder() == to) {
      heed(to);
      close();
    }
  }

  private void failed(String why) {
    if (prompts.questions().asks(SHEET)) {
      obstacle.set("Not saved, what you wrote is still here: " + why);
    } else {
      prompts.notices().fail("what was changed of the athlete was not saved: " + why);
    }
  }

  private void close() {
    if (prompts.questions().asks(SHEET)) {
      prompts.questions().close();
    }
  }

  private void heed(@Nullable SessionFolder open) {
    board.heed(open == null ? List.of() : AthleteNotice.all(open.session().facts()));
  }

  /** Checks a length that failed to be saved again with each key, and warns of the old scale. */
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

  /** Returns a length; one that was not touched keeps its last digit. */
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
