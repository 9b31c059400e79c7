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
    System.exit(run(args, out, err));
  }

  private static int run(String[] args, Writer out, Writer err) {
    try {
      return PalmturnCommand.run(args, out, err, AppStart::run);
    } catch (Throwable e) {
      // Not even the command line could be made, as where no more files can be opened.
      System.err.println(
          "palmturn: can't start (%s): is there enough memory, and may it open enough files?"
              .formatted(e.getClass().getSimpleName()));
      return PalmturnCommand.WRONG_DATA;
    }
  }
}
