package palmturn.lab;

import java.io.FileDescriptor;
import java.io.Writer;
import palmturn.cli.PalmturnCommand;
import palmturn.cli.RootCommand;
import picocli.CommandLine;
import picocli.CommandLine.Command;

/** The laboratory's command line: {@code tools/lab}. */
@Command(
    name = "lab",
    description = "Draws clips with known truth and measures Palmturn on them; for developers.",
    mixinStandardHelpOptions = true,
    versionProvider = PalmturnCommand.Version.class,
    scope = CommandLine.ScopeType.INHERIT,
    sortOptions = false,
    footer = {
      "",
      "tools/lab screenshots DIR writes a picture of every state of the window, by a run of tests.",
      "Exit status: 0 done, 1 something wrong with the data, 2 wrong use."
    },
    subcommands = {
      DrawCommand.class,
      BenchCommand.class,
      OnsetsCommand.class,
      ElbowCommand.class,
      NetworksCommand.class,
      FuzzCommand.class,
      GoldenCommand.class
    })
public final class Lab extends RootCommand {
  private Lab() {}

  public static void main(String[] args) {
    System.exit(
        run(
            args,
            PalmturnCommand.utf8(FileDescriptor.out),
            PalmturnCommand.utf8(FileDescriptor.err)));
  }

  /**
   * Runs one command line.
   *
   * @return the exit status
   */
  static int run(String[] args, Writer out, Writer err) {
    return new Lab().run(CommandLine.defaultFactory(), args, out, err);
  }
}
