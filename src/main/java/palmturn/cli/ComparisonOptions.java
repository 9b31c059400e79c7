package palmturn.cli;

import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** On which terms two readings are compared, the same for every command that does so. */
final class ComparisonOptions {
  @Spec(Spec.Target.MIXEE)
  private CommandSpec command;

  @Option(
      names = "--tolerance",
      paramLabel = "S",
      description =
          "How far apart two marks of one slap may lie, real seconds; by the rule if left out: one"
              + " frame or 0.025, whichever is more, up to a quarter of the median interval.")
  private @Nullable Double toleranceS;

  @Option(
      names = "--remove-offset",
      description = "Take a constant between the two readers' times off before comparing.")
  private boolean removeOffset;

  /** Returns the tolerance, null for the rule's own. */
  @Nullable Double toleranceS() {
    if (toleranceS != null && !(toleranceS > 0 && toleranceS <= 60)) {
      throw new ParameterException(
          command.commandLine(), "--tolerance must be above 0, up to 60 seconds");
    }
    return toleranceS;
  }

  boolean removeOffset() {
    return removeOffset;
  }
}
