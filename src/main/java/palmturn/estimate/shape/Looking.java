package palmturn.estimate.shape;

import java.nio.file.Path;

/**
 * How the landmark networks look at a trial.
 *
 * @param folder where they lie
 * @param lite the faster, less exact networks of hand and body, for the full ones
 * @param everyFrame at every frame of the trial, not only around its contacts
 */
public record Looking(Path folder, boolean lite, boolean everyFrame) {
  /** Returns how an estimate looks; chosen by measurement, see docs/measured.md. */
  public static Looking usual(Path folder) {
    return new Looking(folder, false, true);
  }
}
