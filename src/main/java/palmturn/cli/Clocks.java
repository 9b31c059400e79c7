package palmturn.cli;

import java.time.Clock;

/** The one place of the command line that knows the time. */
final class Clocks {
  static final Clock SYSTEM = Clock.systemDefaultZone();

  private Clocks() {}
}
