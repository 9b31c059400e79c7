package palmturn;

import java.io.PrintWriter;
import palmturn.cli.PalmturnCommand;

/** Starts the program and wires its two faces. */
public final class Palmturn {
  private Palmturn() {}

  public static void main(String[] args) {
    PrintWriter out = PalmturnCommand.utf8(System.out);
    PrintWriter err = PalmturnCommand.utf8(System.err);
    System.exit(PalmturnCommand.run(args, out, err, AppStart::run));
  }
}
