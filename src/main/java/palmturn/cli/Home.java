package palmturn.cli;

import java.net.URISyntaxException;
import java.nio.file.Path;
import palmturn.trial.UserError;

/** The folder that the program lies in, with its bundled clips. */
public final class Home {
  private Home() {}

  /** Returns the folder that the launcher names, else the one the program's jar lies under. */
  public static Path folder() throws UserError {
    String named = System.getProperty("palmturn.home");
    if (named != null) {
      return Path.of(named);
    }
    try {
      Path code = Path.of(Home.class.getProtectionDomain().getCodeSource().getLocation().toURI());
      Path target = code.getParent();
      if (target != null && target.getParent() != null) {
        return target.getParent();
      }
    } catch (URISyntaxException e) {
      throw new UserError(
          "the program's own folder can't be found: start it with tools/palmturn", e);
    }
    throw new UserError("the program's own folder can't be found: start it with tools/palmturn");
  }
}
