package palmturn.cli;

import org.jspecify.annotations.Nullable;
import palmturn.estimate.request.Hints;
import palmturn.trial.BodyLength;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** The athlete's measured lengths, which give an estimate its centimetres. */
final class LengthOptions {
  @Spec(Spec.Target.MIXEE)
  private CommandSpec spec;

  @Option(names = "--forearm", paramLabel = "CM", description = "Measured forearm length.")
  private @Nullable Double forearmCm;

  @Option(
      names = "--hand-length",
      paramLabel = "CM",
      description = "Measured hand length, wrist crease to tip of the middle finger, held flat.")
  private @Nullable Double handCm;

  @Option(names = "--stature", paramLabel = "CM", description = "Standing height.")
  private @Nullable Double statureCm;

  /** Returns whether any was said. */
  boolean given() {
    return forearmCm != null || handCm != null || statureCm != null;
  }

  @Nullable Double forearmCm() {
    return checked("--forearm", forearmCm, BodyLength.FOREARM);
  }

  @Nullable Double handCm() {
    return checked("--hand-length", handCm, BodyLength.HAND);
  }

  @Nullable Double statureCm() {
    return checked("--stature", statureCm, BodyLength.STATURE);
  }

  /** Returns hints with these lengths. */
  Hints addedTo(Hints hints) {
    return hints.withLengths(forearmCm(), handCm(), statureCm());
  }

  private @Nullable Double checked(String option, @Nullable Double cm, BodyLength what) {
    if (cm != null && !what.fits(cm)) {
      throw new ParameterException(
          spec.commandLine(),
          "%s must be centimetres %s, not %s".formatted(option, what.bounds(), cm));
    }
    return cm;
  }
}
