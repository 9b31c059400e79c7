package palmturn.advise;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import palmturn.measure.Measures;
import palmturn.measure.Phrases;
import palmturn.measure.Quality;
import palmturn.measure.TrialScore;
import palmturn.trial.Block;
import palmturn.trial.DrillHand;
import palmturn.trial.Hand;
import palmturn.trial.TrialId;

/** Rule 0: figures that the clips or marks leave unknown, and how to film or mark to get them. */
final class FilmAgain {
  private static final int LEAST_TRIALS = 2;
  private static final String PROTOCOL =
      "Film three trials with each hand, right and left in turn, with 30 s of rest between.";

  private final Evidence evidence;
  private final List<String> why = new ArrayList<>();
  private final Set<String> actions = new LinkedHashSet<>();
  private final Set<TrialId> about = new LinkedHashSet<>();

  private FilmAgain(Evidence evidence) {
    this.evidence = evidence;
  }

  /** Returns what to film again; null where the figures can all be told. */
  static @Nullable Advice of(Evidence evidence, List<HandFigures> hands) {
    FilmAgain found = new FilmAgain(evidence);
    hands.forEach(hand -> found.look(hand, hands));
    if (found.why.isEmpty()) {
      return null;
    }
    found.addWarnings();
    return new Advice(
        Advice.FILM_AGAIN,
        DrillHand.NONE,
        null,
        true,
        String.join(" ", found.why),
        String.join(" ", found.actions),
        List.of());
  }

  private void look(HandFigures hand, List<HandFigures> all) {
    String who = named(hand.hand());
    if (hand.block() == null) {
      if (all.stream().anyMatch(each -> each.block() != null)) {
        say(Phrases.capital(who) + " has no trial to score, so the hands can't be compared.");
      } else if (hand.hand() == Hand.LEFT) {
        say("There is no trial to score with either hand.");
      }
      actions.add(PROTOCOL);
      return;
    }
    HandFigures other = all.get(all.get(0) == hand ? 1 : 0);
    if (hand.trials().size() < LEAST_TRIALS) {
      say(
          "%s has one trial in %s: no interval, and no comparison of the hands."
              .formatted(Phrases.capital(who), hand.block()));
      actions.add(PROTOCOL);
    } else if (other.block() != null
        && !other.block().equals(hand.block())
        && Block.order(hand.block()) < Block.order(other.block())) {
      say(
          "%s was not filmed in %s, so the hands can't be compared as they are now."
              .formatted(Phrases.capital(who), other.block()));
      actions.add(PROTOCOL);
    }
    noteRefused(hand);
    noteTooFew(hand);
    noteUnknownZones(hand);
    noteRhythm(hand);
  }

  private void noteRefused(HandFigures hand) {
    Map<String, List<TrialId>> reasons = new LinkedHashMap<>();
    for (TrialScore trial : hand.trials()) {
      if (!trial.timeRefusedWhy().isEmpty()) {
        reasons
            .computeIfAbsent(ended(trial.timeRefusedWhy()), key -> new ArrayList<>())
            .add(trial.trial());
      }
    }
    reasons.forEach(
        (reason, trials) -> {
          say("No speed, rhythm or slow-down from %s: %s.".formatted(names(hand, trials), reason));
          about.addAll(trials);
          actions.add("Film at real speed, not in slow motion.");
        });
  }

  private void noteTooFew(HandFigures hand) {
    List<TrialId> trials =
        hand.trials().stream()
            .filter(t -> t.timeRefusedWhy().isEmpty() && t.speed().rateSlapsPerS() == null)
            .map(TrialScore::trial)
            .toList();
    if (!trials.isEmpty()) {
      say("Too few slaps to tell a rate in %s.".formatted(names(hand, trials)));
      about.addAll(trials);
      actions.add("Film the whole trial, from before the first slap to after the last.");
    }
  }

  private void noteUnknownZones(HandFigures hand) {
    List<TrialId> trials =
        hand.trials().stream()
            .filter(trial -> trial.accuracy().cleanSharePct() == null)
            .map(TrialScore::trial)
            .toList();
    if (!trials.isEmpty()) {
      say(
          "Where the hand touched is unknown for at least one slap in %s."
              .formatted(names(hand, trials)));
      about.addAll(trials);
      actions.add(
          "Mark the zone of every slap; where the picture does not show it, film closer, from the"
              + " front, with both palms in view.");
    }
  }

  private void noteRhythm(HandFigures hand) {
    HandFigures.LimitCheck held = hand.checkLimit(Quality.RHYTHM, evidence.limits());
    if (held != null && held.coarse()) {
      double floor =
          hand.trials().stream()
              .map(trial -> trial.rhythm().timingFloorPct())
              .filter(Objects::nonNull)
              .mapToDouble(Double::doubleValue)
              .average()
              .orElse(0);
      say(
          ("Whether %s is even can't be told: its steady CV is at most %s %%, and marks this coarse"
                  + " give %s %% to a perfectly even hand.")
              .formatted(
                  named(hand.hand()),
                  Measures.STEADY_CV.text(held.value()),
                  Measures.TIMING_FLOOR.text(floor)));
      finer();
    } else if (held == null && hand.mean(Quality.SPEED) != null) {
      say("How even %s is can't be told from these marks.".formatted(named(hand.hand())));
      finer();
    }
  }

  private void finer() {
    actions.add(
        "Film at 60 frames a second or more, with sound, in a quiet room; let no mark stay typed"
            + " along.");
  }

  private void addWarnings() {
    Map<String, List<TrialId>> warned = new LinkedHashMap<>();
    for (TrialId trial : about) {
      for (String warning : evidence.warnings().getOrDefault(trial, List.of())) {
        warned.computeIfAbsent(ended(warning), key -> new ArrayList<>()).add(trial);
      }
    }
    warned.forEach(
        (warning, trials) -> say("%s: %s.".formatted(Phrases.list(namesOf(trials)), warning)));
  }

  private void say(String sentence) {
    why.add(sentence);
  }

  private static String named(Hand hand) {
    return "the %s hand".formatted(hand.code());
  }

  private static String ended(String sentence) {
    return sentence.endsWith(".") ? sentence.substring(0, sentence.length() - 1) : sentence;
  }

  private static String names(HandFigures hand, List<TrialId> trials) {
    return trials.size() > 1 && trials.size() == hand.trials().size()
        ? "all trials of %s in %s".formatted(named(hand.hand()), hand.block())
        : Phrases.list(namesOf(trials));
  }

  private static List<String> namesOf(List<TrialId> trials) {
    return trials.stream().map(TrialId::name).toList();
  }
}
