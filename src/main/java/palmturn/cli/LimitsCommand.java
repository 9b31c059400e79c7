package palmturn.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import palmturn.measure.Decimals;
import palmturn.measure.Limit;
import palmturn.measure.Limits;
import palmturn.measure.Quality;
import palmturn.settings.UserFolders;
import palmturn.wording.Figures;
import palmturn.work.score.LimitsInForce;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

@Command(
    name = "limits",
    description = "Lists the limits and margins that figures are held against, or writes them.")
final class LimitsCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Mixin private EditedOptions edited;

  @Override
  public Integer call() throws Exception {
    if (edited.written(LimitsInForce::write, LimitsInForce.FILE)) {
      return PalmturnCommand.DONE;
    }
    LimitsInForce counts = LimitsInForce.of(UserFolders.settings(), edited.session());
    lines(counts.limits()).forEach(spec.commandLine().getOut()::println);
    spec.commandLine().getOut().println();
    Output.print(
        spec,
        "%s",
        counts.file() == null ? "These are the program's own." : "These are from " + counts.file());
    edited.where(LimitsInForce.FILE);
    return PalmturnCommand.DONE;
  }

  /** Returns limits and margins as the lines of a table. */
  static List<String> lines(Limits limits) {
    return TextTable.lines(rows(limits));
  }

  private static List<List<String>> rows(Limits limits) {
    List<List<String>> rows = new ArrayList<>();
    rows.add(List.of("limit or margin", "value", "source"));
    add(rows, "clean share at least, %", limits.cleanSharePct());
    add(rows, "steady CV at most, %", limits.steadyCvPct());
    add(rows, "slow-down at most, %/s", limits.slowDownPctPerS());
    add(rows, "elbow at most, cm", limits.elbowCm());
    add(rows, "rate at least, slaps/s", limits.minRateSlapsPerS());
    add(rows, "margin of speed, " + Quality.SPEED.marginUnit(), limits.margins().speedPct());
    add(
        rows,
        "margin of the clean share, " + Quality.ACCURACY.marginUnit(),
        limits.margins().cleanSharePoints());
    add(
        rows,
        "margin of the steady CV, " + Quality.RHYTHM.marginUnit(),
        limits.margins().steadyCvPoints());
    add(
        rows,
        "margin of the slow-down, " + Quality.ENDURANCE.marginUnit(),
        limits.margins().slowDownPctPerS());
    return rows;
  }

  private static void add(List<List<String>> rows, String name, @Nullable Limit limit) {
    rows.add(
        limit == null
            ? List.of(name, Figures.NONE, "not set")
            : List.of(name, Decimals.plain(limit.value()), limit.source()));
  }
}
