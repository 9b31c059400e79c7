package palmturn.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.Writer;
import java.util.Locale;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import palmturn.trial.UserError;
import picocli.CommandLine;
import picocli.CommandLine.Option;
import picocli.CommandLine.ScopeType;

/**
 * The root of a command line. An error is one line on standard error, wrong use ends with status 2
 * and wrong data with 1; {@code --debug} adds the stack trace.
 */
public abstract class RootCommand {
  @Option(
      names = "--debug",
      scope = ScopeType.INHERIT,
      description = "Show where an error came from.")
  private boolean debug;

  /**
   * Runs a command line with this command as its root.
   *
   * @param factory makes the sub-commands
   * @return the exit status
   */
  public final int run(CommandLine.IFactory factory, String[] args, Writer out, Writer err) {
    CommandLine line = new CommandLine(this, factory);
    TerminalWriter printed = new TerminalWriter(out);
    line.setOut(new PrintWriter(printed, true));
    line.setErr(new PrintWriter(new TerminalWriter(err), true));
    // Help in bold would need the orders that the writers keep from the terminal.
    line.setColorScheme(CommandLine.Help.defaultColorScheme(CommandLine.Help.Ansi.OFF));
    line.setCaseInsensitiveEnumValuesAllowed(true);
    line.setParameterExceptionHandler(
        (e, given) -> {
          e.getCommandLine().getErr().println("palmturn: " + oneLine(inTypedWords(e.getMessage())));
          e.getCommandLine()
              .getErr()
              .printf("Try '%s --help'.%n", e.getCommandLine().getCommandSpec().qualifiedName());
          return PalmturnCommand.WRONG_USE;
        });
    line.setExecutionExceptionHandler((e, where, parsed) -> report(e, where.getErr()));
    int status = execute(line, args);
    line.getOut().flush();
    IOException lost = printed.failure();
    if (lost != null && !isClosedPipe(lost)) {
      line.getErr().println("palmturn: the output can't be written: " + lost.getMessage());
    }
    line.getErr().flush();
    return lost == null ? status : Math.max(status, PalmturnCommand.WRONG_DATA);
  }

  /** Returns an error with the words of an option as they are typed, not as constants. */
  private static String inTypedWords(@Nullable String error) {
    return Pattern.compile("expected one of \\[[A-Z_, ]+] \\(case-insensitive\\)")
        .matcher(String.valueOf(error))
        .replaceAll(
            found -> found.group().toLowerCase(Locale.ROOT).replace(" (case-insensitive)", ""));
  }

  private int execute(CommandLine line, String[] args) {
    try {
      return line.execute(args);
    } catch (Error e) {
      // Too little memory, or a part of the program that can't be loaded.
      return report(e, line.getErr());
    }
  }

  /** Whoever reads what is printed has seen enough, as {@code head} has; that needs no word. */
  private static boolean isClosedPipe(IOException e) {
    return String.valueOf(e.getMessage()).contains("Broken pipe");
  }

  /** Prints an error on one line, and where it came from if that was asked for. */
  final int report(Throwable error, PrintWriter err) {
    if (debug) {
      error.printStackTrace(err);
    }
    err.println("palmturn: " + oneLine(sentence(error)));
    return PalmturnCommand.WRONG_DATA;
  }

  /** Returns what went wrong, as a user can act on it. */
  public static @Nullable String sentence(Throwable error) {
    if (error instanceof UserError) {
      return error.getMessage();
    }
    Throwable cause = error;
    while (cause.getCause() != null && !(cause instanceof IOException)) {
      cause = cause.getCause();
    }
    if (error instanceof OutOfMemoryError) {
      return "not enough memory: close other programs, or give it more, as with"
          + " PALMTURN_JAVA_OPTS=-Xmx2g";
    }
    if (cause instanceof IOException || error instanceof LinkageError) {
      return "a file can't be read or written (%s): is the disk or the temporary folder %s full,"
              .formatted(cause.getMessage(), System.getProperty("java.io.tmpdir"))
          + " or are too many files open?";
    }
    return "something went wrong inside (%s): run again with --debug and report it"
        .formatted(error);
  }

  private static String oneLine(@Nullable String text) {
    return text == null ? "" : text.strip().replaceAll("\\s*\\R\\s*", "; ");
  }
}
