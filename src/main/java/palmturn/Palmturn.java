package palmturn;

import java.io.FileDescriptor;
import java.io.Writer;
import palmturn.cli.PalmturnCommand;

/** Starts the program and wires its two faces. */
public final class Palmturn {
  private Palmturn() {}

  public static void main(String[] args) {
    Writer out = PalmturnCommand.utf8(FileDescriptor.out);
    Writer err = PalmturnCommand.utf8(FileDescriptor.err);
    System.exit(PalmturnCommand.run(args, out, err, AppStart::run));
  }
}
