package palmturn.cli;

import java.nio.file.Path;
import java.time.ZoneId;
import java.util.concurrent.Callable;
import palmturn.store.SessionFolder;
import palmturn.trial.DrillHand;
import palmturn.work.session.DrillTime;
import palmturn.work.session.Notes;
import palmturn.work.session.Sessions;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

@Command(name = "drill", description = "Says which drill was done before a block.")
final class DrillCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Parameters(paramLabel = "SESSION", description = "The session's folder.")
  private Path session;

  @Option(names = "--block", required = true, description = "The block after it: after-1 …")
  private String block;

  @Option(names = "--code", required = true, description = "The drill's code; rest is one too.")
  private String code;

  @Option(
      names = "--hand",
      required = true,
      description = "The hand that it trained: left, right, both, none.")
  private DrillHand hand;

  @Option(names = "--dose", defaultValue = "", description = "How much, in your own words.")
  private String dose;

  @Option(
      names = "--start",
      defaultValue = "",
      paramLabel = "TIME",
      description = "When it began: 17:30 on the session's day, or 2026-11-14 17:30.")
  private String start;

  @Option(
      names = "--end",
      defaultValue = "",
      paramLabel = "TIME",
      description = "When it ended; with the start, a rest of that length can be its control.")
  private String end;

  @Override
  public Integer call() throws Exception {
    try (SessionFolder folder = Sessions.open(session)) {
      folder.notices().forEach(notice -> Output.warn(spec, notice));
      DrillTime time = DrillTime.read(start, end, folder.session().date(), ZoneId.systemDefault());
      Notes.drill(folder, block, code, hand, dose, time);
    }
    Output.print(spec, "%s follows %s, %s", block, code, hand.code());
    return PalmturnCommand.DONE;
  }
}
