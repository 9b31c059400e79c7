package palmturn.lab;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.List;
import java.util.stream.Stream;
import palmturn.cli.Run;

/** One command line of the laboratory as a test runs it. */
final class LabRun {
  private LabRun() {}

  static Run of(Object... args) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    int status =
        Lab.run(
            Stream.of(args).map(Object::toString).toArray(String[]::new),
            new PrintWriter(out),
            new PrintWriter(err));
    return new Run(status, out.toString(), err.toString(), List.of());
  }
}
