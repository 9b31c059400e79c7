package palmturn.app.differences;

import java.time.ZoneOffset;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import palmturn.settle.Difference;
import palmturn.settle.Difference.What;
import palmturn.trial.Coded;
import palmturn.trial.Decision;
import palmturn.trial.Estimate;
import palmturn.trial.EstimatedSlap;
import palmturn.trial.Settlement;
import palmturn.trial.Side;
import palmturn.trial.Slap;
import palmturn.trial.Span;
import palmturn.trial.TimeScale;
import palmturn.trial.Zone;
import palmturn.wording.MarkNames;
import palmturn.wording.Names;

/**
 * Texts about differences. Times are real seconds from the first slap, as on the strip.
 *
 * @param pair the two readings
 * @param scale how media seconds become real ones
 * @param zeroS the moment that times are counted from, media seconds
 */
record DifferenceWords(ReadingPair pair, TimeScale scale, double zeroS) {
  private static final DateTimeFormatter MOMENT =
      DateTimeFormatter.ofPattern("d MMMM uuuu, HH:mm 'UTC'", Locale.ENGLISH);

  /** Returns a reading inside a sentence. */
  String readingName(boolean second) {
    return isEstimate(second) ? "the estimate" : "reading " + name(second);
  }

  /** Returns a reading at the start of a sentence. */
  String readingNameCapitalised(boolean second) {
    return isEstimate(second) ? "The estimate" : "Reading " + name(second);
  }

  String name(boolean second) {
    return second ? pair.second() : pair.first();
  }

  boolean isEstimate(boolean second) {
    return name(second).equals(Settlement.ESTIMATE);
  }

  String time(double mediaS) {
    double realS = scale.known() ? scale.realBetween(zeroS, mediaS) : mediaS - zeroS;
    return seconds(realS, 3);
  }

  private static String seconds(double s, int digits) {
    String text = String.format(Locale.ROOT, "%." + digits + "f", s);
    return text.replaceFirst("^-(0\\.0+)$", "$1").replace('-', '−') + "\u00A0s";
  }

  /** Returns the line of the list, such as "Palm or back?". */
  String title(ReviewItem item) {
    Difference<?> difference = item.difference();
    boolean second = difference.a() == null;
    Object one = second ? difference.b() : difference.a();
    if (one instanceof Span span) {
      return item.mainDifference() == What.APART
          ? capital(MarkNames.fault(span.kind())) + ": times differ"
          : "Only %s: %s".formatted(readingName(second), MarkNames.fault(span.kind()));
    }
    if (difference.a() instanceof Slap a && difference.b() instanceof Slap b) {
      return switch (item.mainDifference()) {
        case DOUBLE -> "Double or not?";
        case KIND -> capital(kindName(a)) + " or " + kindName(b) + "?";
        case SIDE -> orUnknown(a.side().code(), b.side().code(), "Palm or back?");
        case ZONE -> orUnknown(a.zone().code(), b.zone().code(), "Which place on the hand?");
        default -> String.format(Locale.ROOT, "%.0f ms apart", Math.abs(1000 * difference.gapS()));
      };
    }
    return one instanceof Slap mark
        ? "Only %s has %s".formatted(readingName(second), withArticle(kindName(mark)))
        : "";
  }

  private static String orUnknown(String a, String b, String unknown) {
    return a.equals("unknown") || b.equals("unknown") ? unknown : capital(a) + " or " + b + "?";
  }

  /** Returns the second line of the list. */
  String detail(ReviewItem item) {
    Difference<?> difference = item.difference();
    if (difference.a() instanceof Slap a && difference.b() instanceof Slap b) {
      List<String> parts = new ArrayList<>();
      for (What what : difference.what()) {
        parts.add(
            switch (what) {
              case DOUBLE, KIND -> sideBySide(kindName(a), kindName(b));
              case SIDE -> sideBySide(side(a), side(b));
              case ZONE -> sideBySide(zone(a), zone(b));
              default ->
                  difference.what().size() > 1
                      ? String.format(
                          Locale.ROOT, "%.0f ms apart", Math.abs(1000 * difference.gapS()))
                      : sideBySide(time(a.timeS()), time(b.timeS()));
            });
      }
      return String.join("; ", parts);
    }
    if (difference.a() instanceof Span a && difference.b() instanceof Span b) {
      return sideBySide(stretch(a), stretch(b));
    }
    Object one = difference.a() == null ? difference.b() : difference.a();
    if (one instanceof Span span) {
      return stretch(span);
    }
    return one instanceof Slap mark ? side(mark) + ", " + zone(mark) : "";
  }

  private String sideBySide(String a, String b) {
    return "%s %s, %s %s".formatted(name(false), a, name(true), b);
  }

  private String stretch(Span span) {
    return time(span.startS()).replace("\u00A0s", "") + " to " + time(span.endS());
  }

  /** Returns the question. */
  String question(ReviewItem item) {
    Difference<?> difference = item.difference();
    Object one = difference.a() == null ? difference.b() : difference.a();
    String when = time(difference.timeS());
    if (one instanceof Span span) {
      String time = item.mainDifference() == What.APART ? "" : " from %s".formatted(stretch(span));
      String what =
          switch (span.kind()) {
            case BENT_WRIST -> "was the wrist bent";
            case ELBOW_OUT -> "was the elbow out";
            case TARGET_MOVED -> "did the target move";
            case PAUSE -> "was there a pause";
          };
      return time.isEmpty() ? "When " + what + "?" : capital(what) + time + "?";
    }
    if (difference.a() instanceof Slap a && difference.b() instanceof Slap b) {
      return switch (item.mainDifference()) {
        case DOUBLE -> "Is this a double, at " + when + "?";
        case APART -> "At " + when + " or at " + time(b.timeS()) + "?";
        case SIDE -> "Palm or back, at " + when + "?";
        case KIND -> capital(kindName(a)) + " or " + kindName(b) + ", at " + when + "?";
        default ->
            orUnknown(a.zone().code(), b.zone().code(), "Which place on the hand?")
                .replace("?", ", at " + when + "?");
      };
    }
    return one instanceof Slap mark
        ? "Was there " + withArticle(kindName(mark)) + " at " + when + "?"
        : "";
  }

  /** Returns both readings' marks in sentences. */
  String explanation(ReviewItem item) {
    return "%s has %s. %s has %s."
        .formatted(
            readingNameCapitalised(false),
            describe(item, item.difference().a()),
            readingNameCapitalised(true),
            describe(item, item.difference().b()));
  }

  /** Returns a reading's mark in a difference. */
  String describe(ReviewItem item, @Nullable Object mark) {
    if (mark instanceof Slap slap) {
      return describe(slap, item.difference().what().contains(What.ZONE));
    }
    if (mark instanceof Span span) {
      return describe(span);
    }
    Object other = item.difference().a() == null ? item.difference().b() : item.difference().a();
    return other instanceof Slap slap ? "no " + kindName(slap) + " here" : "nothing here";
  }

  /**
   * Returns a mark in words.
   *
   * @param tellCentre whether the centre is named too
   */
  String describe(Slap slap, boolean tellCentre) {
    String sided = slap.side() == Side.UNKNOWN ? "" : slap.side().code() + " ";
    String plain = slap.kind() == Slap.Kind.SLAP || slap.kind() == Slap.Kind.DOUBLE ? sided : "";
    String after = plain.isEmpty() ? ", " + side(slap) : "";
    String place =
        switch (slap.zone()) {
          case FINGERS -> " on the fingers";
          case WRIST -> " on the wrist";
          case EDGE -> " on the edge";
          case CENTRE -> tellCentre ? " on the centre" : "";
          case UNKNOWN -> tellCentre ? ", zone unknown" : "";
        };
    return withArticle(plain + kindName(slap)) + place + " at " + time(slap.timeS()) + after;
  }

  /** Returns a stretch in words. */
  String describe(Span span) {
    String what =
        switch (span.kind()) {
          case BENT_WRIST -> "a bent wrist";
          case ELBOW_OUT -> "the elbow out";
          case TARGET_MOVED -> "the target moving";
          case PAUSE -> "a pause";
        };
    return what + " from " + stretch(span);
  }

  /** Returns a mark in as few words as can be, such as "palm double, fingers". */
  static String shortLabel(Slap slap) {
    return side(slap)
        + (slap.kind() == Slap.Kind.SLAP ? "" : " " + kindName(slap))
        + (slap.zone().offCentre() ? ", " + slap.zone().code() : "");
  }

  /** Returns the evidence for the estimate's mark; empty for a reader's mark. */
  String evidence(ReviewItem item, @Nullable Estimate made) {
    if (made == null || !isEstimate(true) || !(item.difference().b() instanceof Slap slap)) {
      return "";
    }
    return made.slaps().stream()
        .filter(found -> found.timeS() == slap.timeS())
        .findFirst()
        .map(DifferenceWords::evidence)
        .orElse("");
  }

  private static String evidence(EstimatedSlap found) {
    String by =
        found.sources().stream().sorted().map(Coded::code).collect(Collectors.joining(" and "));
    return " It was detected by %s%s."
        .formatted(by, found.doubt().isEmpty() ? "" : ": " + found.doubt());
  }

  private static String side(Slap slap) {
    return slap.side() == Side.UNKNOWN ? "side unknown" : slap.side().code();
  }

  private static String zone(Slap slap) {
    return slap.zone() == Zone.UNKNOWN ? "zone unknown" : slap.zone().code();
  }

  private static String kindName(Slap slap) {
    return switch (slap.kind()) {
      case SLAP -> "slap";
      case DOUBLE -> "double";
      case PART_TURN -> "part turn";
      case MISSED -> "missed turn";
      case OTHER -> "fault";
    };
  }

  private static String withArticle(String noun) {
    return "a " + noun;
  }

  private static String capital(String words) {
    return words.isEmpty()
        ? words
        : words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
  }

  /** Returns what was decided, in a few words. */
  String decisionBrief(Decision<?> decision) {
    return switch (decision.choice()) {
      case FIRST -> "chose " + readingName(false);
      case SECOND -> "chose " + readingName(true);
      case NEITHER -> decision.anew() == null ? "neither: nothing there" : "neither: new mark";
      case OPEN -> "left open";
    };
  }

  /** Returns what was decided, by whom, when and why. */
  String decisionSentence(Decision<?> decision) {
    String anew =
        decision.anew() instanceof Slap slap
            ? ": " + describe(slap, true)
            : decision.anew() instanceof Span span ? ": " + describe(span) : "";
    return "%s%s, by %s on %s.%s"
        .formatted(
            capital(decisionBrief(decision)),
            anew,
            Names.decider(decision),
            MOMENT.format(ZonedDateTime.ofInstant(decision.at(), ZoneOffset.UTC)),
            decision.why().isEmpty() ? "" : " Reason: " + decision.why());
  }
}
