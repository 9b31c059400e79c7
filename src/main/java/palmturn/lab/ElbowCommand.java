package palmturn.lab;

import java.nio.file.Path;
import java.util.List;
import palmturn.cli.PalmturnCommand;
import palmturn.lab.elbow.CoveredElbow;
import palmturn.lab.elbow.ElbowErrors;
import palmturn.lab.elbow.ElbowSearchErrors;
import palmturn.lab.elbow.ElbowSpaceErrors;
import palmturn.lab.elbow.HandScaleErrors;
import palmturn.lab.elbow.LostElbowErrors;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

@Command(
    name = "elbow",
    description = {
      "Compares the elbow's path with the truth of clips, one clip a line.",
      "A TRUTH is a file NAME.truth.json, as tools/lab draw writes it beside a clip."
    })
final class ElbowCommand {
  private static final String TRUTH = "TRUTH";

  @Spec private CommandSpec spec;

  @Command(
      name = "errors",
      description = "Distance of the path from the truth, with the elbow's place and scale given.")
  int errors(
      @Option(
              names = "--off",
              defaultValue = "0",
              paramLabel = "CM",
              description = "Give a place that is wrong by this much, to four sides in turn.")
          double offCm,
      @Option(names = "--found", description = "Take the place that the elbow finder alone finds.")
          boolean found,
      @Parameters(arity = "1..*", paramLabel = TRUTH) List<Path> truths)
      throws Exception {
    ElbowErrors.print(truths, offCm, found, spec.commandLine().getOut());
    return PalmturnCommand.DONE;
  }

  @Command(
      name = "found",
      description = "Distance of the path from the truth where nothing is given; with networks.")
  int found(@Parameters(arity = "1..*", paramLabel = TRUTH) List<Path> truths) throws Exception {
    ElbowSearchErrors.print(truths, spec.commandLine().getOut());
    return PalmturnCommand.DONE;
  }

  @Command(
      name = "space",
      description = "Displacement in the picture and in space against the true one in space.")
  int space(@Parameters(arity = "1..*", paramLabel = TRUTH) List<Path> truths) throws Exception {
    ElbowSpaceErrors.print(truths, spec.commandLine().getOut());
    return PalmturnCommand.DONE;
  }

  @Command(
      name = "covered",
      description = "Wrong frames where something painted over the elbow hides it for 0.6 s.")
  int covered(@Parameters(arity = "1..*", paramLabel = TRUTH) List<Path> truths) throws Exception {
    CoveredElbow.print(truths, spec.commandLine().getOut());
    return PalmturnCommand.DONE;
  }

  @Command(
      name = "unseen",
      description = "Error of a lost elbow's estimated place, with landmark networks and without.")
  int unseen(
      @Option(
              names = "--covered",
              description = "Cover the elbow, instead of removing its path while it is in view.")
          boolean covered,
      @Parameters(index = "0", paramLabel = "SECONDS", description = "Length of the lost stretch.")
          double lostS,
      @Parameters(index = "1..*", arity = "1..*", paramLabel = TRUTH) List<Path> truths)
      throws Exception {
    LostElbowErrors.print(truths, lostS, covered, spec.commandLine().getOut());
    return PalmturnCommand.DONE;
  }

  @Command(
      name = "scale",
      description = "Error of the scale that the hand's length gives, against that at the elbow.")
  int scale(
      @Parameters(index = "0", paramLabel = "HAND_CM", description = "Length of the hand, cm.")
          double handCm,
      @Parameters(index = "1..*", arity = "1..*", paramLabel = TRUTH) List<Path> truths)
      throws Exception {
    HandScaleErrors.print(truths, handCm, spec.commandLine().getOut());
    return PalmturnCommand.DONE;
  }
}
