package palmturn.cli;

import java.util.Locale;
import picocli.CommandLine.Model.CommandSpec;

/** The lines that a command prints. */
public final class Output {
  private Output() {}

  /** Prints a formatted line to the command's standard output. */
  public static void print(CommandSpec spec, String format, Object... values) {
    spec.commandLine().getOut().println(String.format(Locale.ROOT, format, values));
  }

  /** Prints a text as it is, but with plain spaces only, which scripts and searches expect. */
  static void printText(CommandSpec spec, String text) {
    spec.commandLine().getOut().println(text.replace('\u00A0', ' '));
  }

  /** Prints a warning to the command's standard error. */
  static void warn(CommandSpec spec, String text) {
    spec.commandLine().getErr().println("palmturn: warning: " + text);
  }
}
