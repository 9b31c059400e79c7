package palmturn.cli;

import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import palmturn.estimate.request.Hints;
import palmturn.estimate.request.KnownSide;
import palmturn.trial.Coded;
import palmturn.trial.Estimate;
import palmturn.trial.KnownLength;
import palmturn.trial.Point;
import palmturn.trial.Side;
import palmturn.work.estimate.Estimating;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** Options for the sources of an estimate and for what is known of the picture. */
final class EstimateOptions {
  @Spec(Spec.Target.MIXEE)
  private CommandSpec spec;

  @Option(
      names = "--use",
      split = ",",
      paramLabel = "SOURCE",
      description = "Which of sound, motion and shape may be used; all that are there if left out.")
  private @Nullable List<Estimate.Source> use;

  @Option(
      names = "--hand-region",
      split = ",",
      paramLabel = "X,Y,W,H",
      description = "Where the moving hand is: left, top, width, height.")
  private double @Nullable [] handRegion;

  @Option(
      names = "--elbow",
      split = ",",
      paramLabel = "X,Y",
      description = "The moving arm's elbow before the first slap.")
  private double @Nullable [] elbow;

  @Option(
      names = "--trunk",
      split = ",",
      paramLabel = "X,Y",
      description = "A place on the trunk before the first slap.")
  private double @Nullable [] trunk;

  @Option(
      names = "--scale",
      split = ",",
      paramLabel = "X1,Y1,X2,Y2,CM",
      description = "Two places that are CM centimetres apart.")
  private double @Nullable [] scale;

  @Option(
      names = "--side-at",
      paramLabel = "S,SIDE",
      description = "The slap at S seconds is by palm or back, as in 1.25,palm.")
  private @Nullable String sideAt;

  @Mixin private LengthOptions lengths;

  /** Returns whether lengths of the athlete were said, which a session has of its own. */
  boolean ofAthlete() {
    return lengths.given();
  }

  /** Returns whether anything was said that is true of one clip only. */
  boolean ofOneClip() {
    return handRegion != null || elbow != null || trunk != null || scale != null || sideAt != null;
  }

  /** Returns whether the hands' shape was asked for by name. */
  boolean wantsShape() {
    return use != null && use.contains(Estimate.Source.SHAPE);
  }

  Estimating.Options asked() {
    Set<Estimate.Source> sources =
        use == null ? EnumSet.allOf(Estimate.Source.class) : EnumSet.copyOf(use);
    double[] region = numbers("--hand-region", "X,Y,W,H", handRegion, 4);
    double[] length = numbers("--scale", "X1,Y1,X2,Y2,CM", scale, 5);
    if (region != null && !(region[2] > 0 && region[3] > 0)) {
      throw wrong("--hand-region needs a width and a height above 0");
    }
    return new Estimating.Options(
        sources,
        lengths.addedTo(
            new Hints(
                region == null
                    ? null
                    : new Estimate.Region(region[0], region[1], region[2], region[3]),
                point("--elbow", elbow),
                point("--trunk", trunk),
                length == null ? null : scale(length),
                null,
                null,
                null)),
        known());
  }

  private KnownLength scale(double[] given) {
    try {
      return new KnownLength(
          new Point(given[0], given[1]), new Point(given[2], given[3]), given[4]);
    } catch (IllegalArgumentException e) {
      throw wrong("--scale: " + e.getMessage());
    }
  }

  private @Nullable Point point(String option, double @Nullable [] given) {
    double[] place = numbers(option, "X,Y", given, 2);
    return place == null ? null : new Point(place[0], place[1]);
  }

  private double @Nullable [] numbers(
      String option, String form, double @Nullable [] given, int wanted) {
    if (given == null) {
      return null;
    }
    if (given.length != wanted) {
      throw wrong("%s wants %s".formatted(option, form));
    }
    for (double each : given) {
      if (!Double.isFinite(each)) {
        throw wrong("%s wants numbers, not %s".formatted(option, each));
      }
    }
    return given;
  }

  private @Nullable KnownSide known() {
    if (sideAt == null) {
      return null;
    }
    String[] parts = sideAt.split(",", -1);
    try {
      if (parts.length == 2) {
        return new KnownSide(
            Double.parseDouble(parts[0].strip()), Coded.parse(Side.class, parts[1].strip()));
      }
    } catch (IllegalArgumentException e) {
      throw wrong("--side-at: " + e.getMessage());
    }
    throw wrong("--side-at wants a time and a side, as in 1.25,palm");
  }

  private ParameterException wrong(String why) {
    return new ParameterException(spec.commandLine(), why);
  }
}
