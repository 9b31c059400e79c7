package palmturn.clip;

/** The work was stopped by whoever asked for it. */
public final class StoppedException extends RuntimeException {
  private static final long serialVersionUID = 1;

  public StoppedException() {
    super("stopped");
  }
}
