package palmturn.lab;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import palmturn.cli.Output;
import palmturn.cli.PalmturnCommand;
import palmturn.cli.TerminalProgress;
import palmturn.lab.draw.ClipContent;
import palmturn.lab.draw.ClipParameters;
import palmturn.lab.draw.Filming;
import palmturn.lab.draw.SoundKind;
import palmturn.lab.draw.SyntheticClips;
import palmturn.trial.Hand;
import palmturn.trial.UserError;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

@Command(
    name = "draw",
    description = "Draws clips with known truth: NAME.mp4, NAME.truth.json, NAME.marks.csv.")
public final class DrawCommand implements Callable<Integer> {
  /** Hands held still for nearly a second before and after, as in a filmed trial. */
  private static final double LEAD_IN_S = 0.9;

  private static final double TAIL_S = 0.9;

  @Spec private CommandSpec spec;

  @Option(
      names = "--dir",
      required = true,
      paramLabel = "DIR",
      description = "Folder for the clips; made if missing.")
  private Path dir;

  @Option(
      names = "--set",
      defaultValue = "",
      paramLabel = "SET",
      description =
          "demo draws the bundled session's twelve clips, faults sixteen with faults of hand, wrist,"
              + " elbow and turn; without it one clip is drawn, by the options below.")
  private String set;

  @Option(
      names = "--grid",
      description =
          "Draw the clips that the estimate is measured on; clips already drawn are kept.")
  private boolean grid;

  @Option(
      names = "--jobs",
      defaultValue = "1",
      paramLabel = "N",
      description = "Clips of --grid or --set faults drawn at the same time.")
  private int jobs;

  @Option(names = "--name", defaultValue = "clip", description = "The one clip's name.")
  private String name;

  @Option(names = "--hand", defaultValue = "right", description = "The moving hand: left, right.")
  private Hand hand;

  @Option(names = "--rate", defaultValue = "5", description = "Slaps a second: ${DEFAULT-VALUE}.")
  private double rate;

  @Option(names = "--cv", defaultValue = "5", description = "Interval CV, %%: ${DEFAULT-VALUE}.")
  private double cv;

  @Option(
      names = "--turn-bias",
      defaultValue = "0",
      description = "How much longer palm to back takes, %% of the mean interval.")
  private double turnBias;

  @Option(
      names = "--slow-down",
      defaultValue = "0",
      description = "Growth of the intervals, %% a second.")
  private double slowDown;

  @Option(
      names = "--fault",
      paramLabel = "KIND@S",
      description =
          "fingers, wrist, edge, double, part-turn or missed, seconds after the first slap.")
  private List<String> faults = List.of();

  @Option(
      names = "--span",
      paramLabel = "KIND@S-S:SIZE",
      description =
          "bent-wrist (degrees), elbow-out (cm in space) or short-turn (degrees), from and to after the"
              + " first slap.")
  private List<String> spans = List.of();

  @Option(names = "--fps", defaultValue = "60", description = "Frames a second.")
  private int fps;

  @Option(names = "--size", defaultValue = "640x480", description = "Width x height, pixels.")
  private String size;

  @Option(names = "--shake", defaultValue = "0.5", description = "Camera shake, pixels.")
  private double shake;

  @Option(
      names = "--drop",
      defaultValue = "0",
      paramLabel = "SHARE",
      description = "Share of the frames left out at random, 0 to under 1.")
  private double drop;

  @Option(
      names = "--sound",
      defaultValue = "slaps",
      description = "Sound: slaps, none, talk or metronome.")
  private String sound;

  @Option(
      names = "--shown",
      defaultValue = "slaps",
      description = "Content: slaps, still, turning or nobody.")
  private String shown;

  @Option(names = "--seed", defaultValue = "1", description = "Same seed, same clip.")
  private long seed;

  @Option(names = "--slapping", defaultValue = "5.2", description = "Seconds of slapping.")
  private double slappingS;

  @Override
  public Integer call() throws UserError {
    try (TerminalProgress bar = TerminalProgress.on(spec)) {
      if (set.equals("demo")) {
        SyntheticClips.drawDemo(dir, bar);
        Output.print(spec, "drew %d clips into %s", SyntheticClips.demoNames().size(), dir);
        return PalmturnCommand.DONE;
      }
      if (grid) {
        Output.print(
            spec, "%d clips lie in %s", SyntheticClips.drawGrid(dir, Math.max(1, jobs), bar), dir);
        return PalmturnCommand.DONE;
      }
      if (set.equals("faults")) {
        Output.print(
            spec,
            "%d clips lie in %s",
            SyntheticClips.drawFaults(dir, Math.max(1, jobs), bar),
            dir);
        return PalmturnCommand.DONE;
      }
      if (!set.isEmpty()) {
        throw new ParameterException(spec.commandLine(), "--set can only be demo or faults");
      }
      SyntheticClips.drawClip(dir, name, wanted(), share -> bar.at(share, "drawing"));
      Output.print(spec, "drew %s", dir.resolve(name + ".mp4"));
    }
    return PalmturnCommand.DONE;
  }

  private ClipParameters wanted() {
    try {
      String[] sides = size.split("x", 2);
      return new ClipParameters(
          ClipContent.valueOf(constant(shown)),
          hand,
          new ClipParameters.Tempo(rate, cv, turnBias, slowDown),
          faults.stream().map(DrawCommand::fault).toList(),
          spans.stream().map(DrawCommand::stretch).toList(),
          new Filming(fps, Integer.parseInt(sides[0]), Integer.parseInt(sides[1]), shake, drop),
          SoundKind.valueOf(constant(sound)),
          new ClipParameters.Length(LEAD_IN_S, slappingS, TAIL_S),
          seed);
    } catch (IllegalArgumentException | ArrayIndexOutOfBoundsException e) {
      throw new ParameterException(
          spec.commandLine(), "can't draw that: " + String.valueOf(e.getMessage()), e);
    }
  }

  private static ClipParameters.Fault fault(String text) {
    String[] parts = text.split("@", 2);
    return new ClipParameters.Fault(
        ClipParameters.FaultKind.valueOf(constant(parts[0])), Double.parseDouble(parts[1]));
  }

  private static ClipParameters.FaultStretch stretch(String text) {
    String[] parts = text.split("[@:]", 3);
    String[] ends = parts[1].split("-", 2);
    return new ClipParameters.FaultStretch(
        ClipParameters.StretchKind.valueOf(constant(parts[0])),
        Double.parseDouble(ends[0]),
        Double.parseDouble(ends[1]),
        Double.parseDouble(parts[2]));
  }

  private static String constant(String word) {
    return word.toUpperCase(Locale.ROOT).replace('-', '_');
  }
}
