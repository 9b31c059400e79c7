package palmturn.cli;

import java.util.Locale;
import picocli.CommandLine.Model.CommandSpec;

/** Prints a line of a command. */
public final class Say {
  private Say() {}

  /** Prints a formatted line to the command's standard output. */
  public static void to(CommandSpec spec, String format, Object... values) {
    spec.commandLine().getOut().println(String.format(Locale.ROOT, format, values));
  }

  /** Prints a warning to the command's standard error. */
  static void warn(CommandSpec spec, String text) {
    spec.commandLine().getErr().println("palmturn: warning: " + text);
  }
}
