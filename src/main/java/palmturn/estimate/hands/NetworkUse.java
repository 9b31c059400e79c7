package palmturn.estimate.hands;

import java.nio.file.Path;

/**
 * The settings of the landmark networks for a trial.
 *
 * @param folder of their files
 * @param lite the faster, less exact networks of hand and body, for the full ones
 * @param everyFrame at every frame of the trial, not only around its contacts
 */
public record NetworkUse(Path folder, boolean lite, boolean everyFrame) {
  /**
   * Returns an estimate's settings, chosen by measurement, see
   * docs/decisions/0010-full-networks-at-every-frame.md.
   */
  public static NetworkUse usual(Path folder) {
    return new NetworkUse(folder, false, true);
  }
}
