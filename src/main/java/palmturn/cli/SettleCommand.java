package palmturn.cli;

import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import palmturn.store.SessionFolder;
import palmturn.trial.Decision;
import palmturn.trial.Trial;
import palmturn.trial.UserError;
import palmturn.work.session.Sessions;
import palmturn.work.settle.Settling;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

@Command(
    name = "settle",
    description = {
      "Lists where two readings of a trial differ, worst first, and keeps what is decided.",
      "Where both agree the first's marks stand, and where a difference is open too."
    })
final class SettleCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Parameters(paramLabel = "SESSION", description = "The session's folder.")
  private Path session;

  @Option(
      names = "--trial",
      paramLabel = "T",
      description = "A trial, such as right-baseline-1; all that can be settled if left out.")
  private @Nullable String trial;

  @Option(names = "--a", paramLabel = "NAME", description = "The first reader.")
  private @Nullable String first;

  @Option(
      names = "--b",
      paramLabel = "NAME",
      description =
          "The second reader, or estimate; both are the two settled last, else the only two, if"
              + " left out.")
  private @Nullable String second;

  @Mixin private ComparisonOptions comparedBy = new ComparisonOptions();

  @Option(
      names = "--take",
      paramLabel = "NUMBER=a|b|neither|open",
      split = ",",
      description = "Decide a difference by its number; may be given again.")
  private Map<Integer, Take> takes = new LinkedHashMap<>();

  @Option(
      names = "--anew",
      paramLabel = "NUMBER=ROW",
      description = {
        "Decide a difference by a mark that neither reader has: a row of the marks' CSV, such as",
        "3=1.234,,slap,palm,centre, or 5=1.2,1.9,elbow-out,, for a stretch."
      })
  private Map<Integer, String> anew = new LinkedHashMap<>();

  @Option(names = "--by", paramLabel = "INITIALS", description = "Who decides.")
  private @Nullable String by;

  @Option(names = "--why", paramLabel = "TEXT", defaultValue = "", description = "Why, in words.")
  private String why;

  @Option(names = "--json", description = "Print as JSON: one trial laid out, several one a line.")
  private boolean json;

  /** The reading of the two that stands. */
  enum Take {
    A(Decision.Choice.FIRST),
    B(Decision.Choice.SECOND),
    NEITHER(Decision.Choice.NEITHER),
    OPEN(Decision.Choice.OPEN);

    private final Decision.Choice choice;

    Take(Decision.Choice choice) {
      this.choice = choice;
    }
  }

  @Override
  public Integer call() throws Exception {
    if ((first == null) != (second == null)) {
      throw wrong("--a and --b go together");
    }
    boolean deciding = !takes.isEmpty() || !anew.isEmpty();
    if (deciding && (by == null || by.isBlank())) {
      throw wrong("--take and --anew need --by: a decision keeps who made it");
    }
    if (!deciding && (by != null || !why.isEmpty())) {
      throw wrong("--by and --why go with --take or --anew");
    }
    Settling.Terms terms =
        new Settling.Terms(
            first,
            second,
            comparedBy.toleranceS(),
            comparedBy.removeOffset() ? Boolean.TRUE : null);
    try (SessionFolder folder =
        deciding ? Sessions.open(session) : Sessions.openReadOnly(session)) {
      folder.notices().forEach(notice -> Output.warn(spec, notice));
      List<Trial> trials = trials(folder, terms);
      if (deciding && trials.size() > 1) {
        throw wrong("--take and --anew need --trial where there are several to settle");
      }
      for (Trial each : trials) {
        print(result(folder, each, terms), trials.size());
      }
    }
    return PalmturnCommand.DONE;
  }

  private ParameterException wrong(String message) {
    return new ParameterException(spec.commandLine(), message);
  }

  private List<Trial> trials(SessionFolder folder, Settling.Terms terms) throws UserError {
    if (trial == null) {
      return Settling.comparable(folder, terms);
    }
    return List.of(Sessions.trial(folder, trial));
  }

  private Settling.SettlementResult result(SessionFolder folder, Trial each, Settling.Terms terms)
      throws UserError {
    Settling.SettlementResult result = Settling.compare(each, terms);
    Settling.notes(folder, result).forEach(note -> Output.warn(spec, note));
    if (by == null) {
      return result;
    }
    Map<Integer, Decision.Choice> choices = new LinkedHashMap<>();
    takes.forEach((number, take) -> choices.put(number, take.choice));
    return Settling.decide(
        folder, result, new Settling.Decisions(choices, anew, by.strip(), why), Clocks.SYSTEM);
  }

  private void print(Settling.SettlementResult result, int trials) {
    if (json) {
      spec.commandLine().getOut().println(trials == 1 ? result.page().strip() : result.line());
    } else {
      Output.printText(spec, SettleText.of(result));
    }
  }
}
