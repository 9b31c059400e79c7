package palmturn.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import palmturn.measure.Limit;
import palmturn.measure.Limits;
import palmturn.store.SessionFolder;
import palmturn.work.Scoring;
import palmturn.work.Sessions;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

@Command(
    name = "limits",
    description = "Lists the limits and margins that figures are held against, or writes them.")
final class LimitsCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Parameters(
      arity = "0..1",
      paramLabel = "SESSION",
      description = "A session's folder, whose limits.json counts; the program's own if left out.")
  private @Nullable Path session;

  @Option(
      names = "--write",
      paramLabel = "FILE",
      description = "Write the program's own to a file, to be edited.")
  private @Nullable Path write;

  @Option(names = "--force", description = "Replace a file that is there.")
  private boolean force;

  @Override
  public Integer call() throws Exception {
    if (write != null) {
      Scoring.writeLimits(write, force);
      Say.to(spec, "wrote %s: edit it, and put it into a session as limits.json", write);
      return PalmturnCommand.DONE;
    }
    Limits limits = Scoring.limits();
    if (session != null) {
      try (SessionFolder folder = Sessions.openReadOnly(session)) {
        limits = Scoring.limits(folder);
      }
    }
    TextTable.lines(rows(limits)).forEach(spec.commandLine().getOut()::println);
    return PalmturnCommand.DONE;
  }

  private static List<List<String>> rows(Limits limits) {
    List<List<String>> rows = new ArrayList<>();
    rows.add(List.of("limit or margin", "value", "source"));
    add(rows, "clean share at least, %", limits.cleanSharePct());
    add(rows, "steady CV at most, %", limits.steadyCvPct());
    add(rows, "slow-down at most, %/s", limits.slowDownPctPerS());
    add(rows, "elbow at most, cm", limits.elbowCm());
    add(rows, "rate at least, slaps/s", limits.minRateSlapsPerS());
    add(rows, "margin of the rate, % of the mean", limits.margins().speedPct());
    add(rows, "margin of the clean share, points", limits.margins().cleanSharePoints());
    add(rows, "margin of the steady CV, points", limits.margins().steadyCvPoints());
    add(rows, "margin of the slow-down, %/s", limits.margins().slowDownPctPerS());
    return rows;
  }

  private static void add(List<List<String>> rows, String name, @Nullable Limit limit) {
    rows.add(
        limit == null
            ? List.of(name, FigureText.NONE, "not set")
            : List.of(name, FigureText.number(limit.value(), 1), limit.source()));
  }
}
