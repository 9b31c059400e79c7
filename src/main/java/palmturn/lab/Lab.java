package palmturn.lab;

import java.io.PrintWriter;
import palmturn.cli.PalmturnCommand;
import picocli.CommandLine;
import picocli.CommandLine.Command;

/** The laboratory's command line: {@code tools/lab}. */
@Command(
    name = "lab",
    description = "Draws clips with known truth and measures Palmturn on them; for developers.",
    mixinStandardHelpOptions = true,
    scope = CommandLine.ScopeType.INHERIT,
    sortOptions = false,
    subcommands = {DrawCommand.class, BenchCommand.class})
public final class Lab {
  private Lab() {}

  public static void main(String[] args) {
    PrintWriter out = PalmturnCommand.utf8(System.out);
    PrintWriter err = PalmturnCommand.utf8(System.err);
    System.exit(new CommandLine(new Lab()).setOut(out).setErr(err).execute(args));
  }
}
