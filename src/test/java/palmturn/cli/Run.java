package palmturn.cli;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.ArrayList;
import java.util.List;
import palmturn.trial.UserError;

/** One command line as a test runs it. */
public record Run(int status, String out, String err, List<String> opened) {
  /** Names the folder of the user's settings; who tests must not come upon their own. */
  static final String SETTINGS = "palmturn.settings";

  public static Run of(Object... args) {
    System.getProperties().putIfAbsent(SETTINGS, "no-settings");
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    List<String> opened = new ArrayList<>();
    String[] words = new String[args.length];
    for (int i = 0; i < args.length; i++) {
      words[i] = args[i].toString();
    }
    int status =
        PalmturnCommand.run(
            words,
            new PrintWriter(out),
            new PrintWriter(err),
            session -> {
              opened.add(String.valueOf(session));
              if (session != null && session.endsWith("no-display")) {
                throw new UserError("the app needs a display");
              }
            });
    return new Run(status, out.toString(), err.toString(), opened);
  }

  /** Returns how many lines the error has. */
  public long errorLines() {
    return err.lines().count();
  }
}
