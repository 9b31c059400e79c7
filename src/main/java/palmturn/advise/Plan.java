package palmturn.advise;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import palmturn.measure.Phrases;
import palmturn.measure.Quality;
import palmturn.trial.DrillHand;

/**
 * A training plan: one drill a week, so that its effect can be measured by filming before and
 * after.
 *
 * @param weeks up to three; none where there are no figures to plan by
 * @param note what holds before and after them
 */
public record Plan(List<Week> weeks, String note) {
  private static final int AIMS = 2;

  /**
   * One week.
   *
   * @param number from 1
   * @param aim what it is for, a few words
   * @param drill what to do
   * @param hand which hand it trains
   * @param pace the click to start at; null for a drill without one
   * @param control how the drill's effect can be told from practice
   */
  public record Week(
      int number,
      String aim,
      LibraryDrill drill,
      DrillHand hand,
      @Nullable StartingPace pace,
      String control) {}

  private record Goal(DrillHand hand, DrillAim aim) {
    /** Pace goes up only when the slaps are clean, and lasts only when it is even. */
    int order() {
      return switch (aim) {
        case ACCURACY -> 0;
        case DRIFT -> 1;
        case RHYTHM -> 2;
        case SPEED -> 3;
        case ENDURANCE -> 4;
        case TRANSFER -> 5;
      };
    }
  }

  public Plan {
    weeks = List.copyOf(weeks);
  }

  /** Returns the plan that a list of advice comes to. */
  static Plan of(Evidence evidence, DrillLibrary library, List<Advice> advice) {
    List<Goal> open = new ArrayList<>(targets(advice));
    List<Week> weeks = new ArrayList<>();
    if (!open.isEmpty()) {
      Goal first = open.get(0);
      Goal last = first;
      for (int i = 0; i < AIMS; i++) {
        last = open.isEmpty() ? last : open.get(0);
        add(weeks, open, last, evidence, library);
        open.remove(last);
      }
      if (first.aim() != DrillAim.TRANSFER) {
        add(weeks, open, new Goal(first.hand(), DrillAim.TRANSFER), evidence, library);
      }
    }
    return new Plan(weeks, note(advice, open, weeks));
  }

  /**
   * Adds the first drill for a target that is not planned yet, and takes off what it serves too.
   */
  private static void add(
      List<Week> weeks, List<Goal> open, Goal target, Evidence evidence, DrillLibrary library) {
    for (LibraryDrill drill : library.drillsFor(target.aim())) {
      if (weeks.stream().noneMatch(week -> week.drill().equals(drill))) {
        List<Goal> served = new ArrayList<>(List.of(target));
        for (Goal other : List.copyOf(open)) {
          if (!other.equals(target)
              && other.hand() == target.hand()
              && drill.aims().contains(other.aim())) {
            served.add(other);
            open.remove(other);
          }
        }
        DrillHand hand = drill.trains().forAdvice(target.hand());
        weeks.add(
            new Week(
                weeks.size() + 1,
                aims(served),
                drill,
                hand,
                StartingPace.of(evidence, drill, hand),
                control(hand)));
        return;
      }
    }
  }

  /** Returns what to train, each once: the first advised hand first, and it clean before fast. */
  private static List<Goal> targets(List<Advice> advice) {
    Map<DrillHand, List<Goal>> byHand = new LinkedHashMap<>();
    for (Advice each : advice) {
      Goal target = target(each);
      if (target != null) {
        List<Goal> here = byHand.computeIfAbsent(target.hand(), hand -> new ArrayList<>());
        if (!here.contains(target)) {
          here.add(target);
        }
      }
    }
    List<Goal> all = new ArrayList<>();
    for (List<Goal> hand : byHand.values()) {
      hand.sort(Comparator.comparingInt(Goal::order));
      all.addAll(hand);
    }
    return all;
  }

  private static @Nullable Goal target(Advice advice) {
    Quality quality = advice.quality();
    if (quality != null) {
      return new Goal(advice.hand(), DrillAim.of(quality));
    }
    return switch (advice.rule()) {
      case Advice.SIDES -> new Goal(advice.hand(), DrillAim.ACCURACY);
      case Advice.NOTHING -> new Goal(advice.hand(), DrillAim.TRANSFER);
      default -> null;
    };
  }

  private static String aims(List<Goal> targets) {
    String what = Phrases.list(targets.stream().map(target -> what(target.aim())).toList());
    return switch (targets.get(0).hand()) {
      case LEFT, RIGHT -> "%s hand, %s".formatted(targets.get(0).hand().code(), what);
      case BOTH -> "both hands, " + what;
      case NONE -> what;
    };
  }

  private static String what(DrillAim aim) {
    return switch (aim) {
      case DRIFT -> "the elbow";
      case TRANSFER -> "with the racket";
      case SPEED, ACCURACY, RHYTHM, ENDURANCE -> aim.code();
    };
  }

  private static String control(DrillHand hand) {
    return switch (hand) {
      case LEFT -> "The right hand rests meanwhile: it shows what practice alone does.";
      case RIGHT -> "The left hand rests meanwhile: it shows what practice alone does.";
      case BOTH, NONE ->
          "No hand is left out: only a rest of as long, filmed before and after, shows what practice"
              + " alone does.";
    };
  }

  private static String note(List<Advice> advice, List<Goal> left, List<Week> weeks) {
    boolean again = advice.stream().anyMatch(each -> each.rule() == Advice.FILM_AGAIN);
    if (weeks.isEmpty()) {
      return again
          ? "First film again: a plan needs figures."
          : "The library has no drill for this: add one to drills.json.";
    }
    StringBuilder note = new StringBuilder();
    if (again) {
      note.append("First film again, as said above: the plan may change with it. ");
    }
    note.append(
        "One drill a week. End each week with three trials a hand, filmed as a new block that names"
            + " the drill; go on with a drill that changed something, and change one that did"
            + " not.");
    if (!left.isEmpty()) {
      note.append(
          " Left for later: %s; the next figures say whether it is still wanted."
              .formatted(
                  Phrases.list(left.stream().map(target -> aims(List.of(target))).toList())));
    }
    return note.toString();
  }
}
