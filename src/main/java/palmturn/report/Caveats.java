package palmturn.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import palmturn.advise.AthleteNotice;
import palmturn.measure.Phrases;
import palmturn.measure.TrialScore;
import palmturn.settle.SettledTrial;
import palmturn.trial.Block;
import palmturn.trial.ClipFacts;
import palmturn.trial.Hand;
import palmturn.trial.Mirrored;
import palmturn.trial.Reading;
import palmturn.trial.Side;
import palmturn.trial.Slap;
import palmturn.trial.TrialId;
import palmturn.wording.Figures;
import palmturn.wording.MarkNames;
import palmturn.wording.Names;

/** Limits of the clips and work still open, each said once for all trials. */
final class Caveats {
  private final ReportInput input;

  Caveats(ReportInput input) {
    this.input = input;
  }

  /** Returns what is still to be done, one sentence each. */
  List<String> open() {
    Map<String, List<TrialId>> found = new LinkedHashMap<>();
    AthleteNotice consent = AthleteNotice.consent(input.session().facts());
    if (consent != null) {
      found.put(ended(consent.sentence()), List.of());
    }
    uneven(found);
    for (ReportInput.Filmed filmed : input.trials()) {
      TrialId id = filmed.trial().id();
      SettledTrial settled = filmed.settled();
      if (settled != null && settled.open() > 0) {
        add(
            found,
            String.format(
                Locale.ROOT,
                "%d of %s between %s and %s not yet decided",
                settled.open(),
                Figures.count(settled.comparison().differences(), "difference"),
                settled.comparison().a().name(),
                settled.comparison().b().name()),
            id);
      }
      Reading reading = filmed.reading();
      if (reading == null) {
        add(found, "Filmed and not yet marked", id);
        continue;
      }
      if (!reading.finished()) {
        add(found, "Reading still open, so its figures may change", id);
      } else if (reading.slaps().stream().noneMatch(Slap::counts)) {
        add(found, "Read to the end, and not one slap in it", id);
      }
      if (reading.slaps().stream().anyMatch(slap -> !slap.seen())) {
        add(found, "Marks copied from the estimate that nobody has looked at", id);
      }
      if (reading.slaps().stream().anyMatch(MarkNames::unnamed)) {
        add(found, "Faults marked and not yet named", id);
      }
    }
    return sentences(found);
  }

  /** Adds what the two hands lack of being comparable, block by block. */
  private void uneven(Map<String, List<TrialId>> found) {
    input.trials().stream()
        .map(filmed -> filmed.trial().id().block())
        .distinct()
        .sorted(Comparator.comparingInt(Block::order))
        .forEach(
            block -> {
              long left = read(block, Hand.LEFT);
              long right = read(block, Hand.RIGHT);
              String of = Phrases.capital(Names.block(block)) + ": ";
              if (left == 0 && right == 0) {
                return;
              }
              if (left == 0 || right == 0) {
                found.put(
                    "%sno read trial of the %s hand, so the hands can’t be compared"
                        .formatted(of, left == 0 ? "left" : "right"),
                    List.of());
              } else if (left != right) {
                found.put(
                    String.format(
                        Locale.ROOT,
                        "%s%s of the left hand and %d of the right",
                        of,
                        Figures.count(left, "read trial"),
                        right),
                    List.of());
              }
              for (Hand hand : Hand.values()) {
                if (read(block, hand) == 1) {
                  found.put(
                      "%sone read trial of the %s hand, so its figures have no interval and can’t be compared"
                          .formatted(of, hand.code()),
                      List.of());
                }
              }
            });
  }

  private long read(String block, Hand hand) {
    return input.trials().stream()
        .filter(filmed -> filmed.reading() != null && filmed.trial().paceSlapsPerS() == null)
        .map(filmed -> filmed.trial().id())
        .filter(id -> id.block().equals(block) && id.hand() == hand)
        .count();
  }

  /** Returns what could not be told, and why, one sentence each. */
  List<String> limits() {
    Map<String, List<TrialId>> found = new LinkedHashMap<>();
    for (ReportInput.Filmed filmed : input.trials()) {
      TrialId id = filmed.trial().id();
      ClipFacts clip = filmed.clip();
      if (clip == null) {
        add(found, "The clip could not be opened", id);
      } else {
        clip.warnings().forEach(warning -> add(found, ended(warning), id));
      }
      if (filmed.trial().mirrored() == Mirrored.UNKNOWN) {
        add(found, "It is not known whether the file shows the athlete mirrored", id);
      }
      Reading reading = filmed.reading();
      if (reading != null && reading.slaps().stream().anyMatch(Caveats::sideUnknown)) {
        add(found, "The side of a slap could not be told", id);
      }
    }
    for (TrialScore score : input.score().trials()) {
      if (!score.timeRefusedWhy().isEmpty()) {
        add(found, ended(Phrases.capital(score.timeRefusedWhy())), score.trial());
      }
      if (Boolean.FALSE.equals(score.rhythm().resolved())) {
        add(
            found,
            "Rhythm is only an upper bound, because its marks are too coarse for so even a hand",
            score.trial());
      }
      if (score.accuracy().clean() == null) {
        add(
            found,
            "Where the hand touched is unknown for at least one slap, so the clean share can’t be"
                + " told",
            score.trial());
      }
      if (score.drift().elbowMaxCm() == null) {
        add(
            found,
            "How far the elbow went can’t be told: it was not followed, or there is no scale",
            score.trial());
      }
    }
    return sentences(found);
  }

  private static boolean sideUnknown(Slap slap) {
    return slap.side() == Side.UNKNOWN;
  }

  private static String ended(String warning) {
    return warning.endsWith(".") ? warning.substring(0, warning.length() - 1) : warning;
  }

  private static void add(Map<String, List<TrialId>> found, String what, TrialId where) {
    found.computeIfAbsent(what, key -> new ArrayList<>()).add(where);
  }

  private List<String> sentences(Map<String, List<TrialId>> found) {
    return found.entrySet().stream()
        .map(
            each ->
                each.getKey()
                    + (each.getValue().isEmpty() ? "" : ": " + where(each.getValue()))
                    + ".")
        .toList();
  }

  private String where(List<TrialId> trials) {
    List<TrialId> distinct = trials.stream().distinct().toList();
    if (distinct.size() > 2 && distinct.size() == input.trials().size()) {
      return "all trials";
    }
    return String.join("; ", distinct.stream().map(Names::trial).toList());
  }
}
