package palmturn.estimate.hands;

import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.nio.file.Path;
import java.util.List;
import palmturn.work.models.LandmarkModels;
import palmturn.work.models.LandmarkModels.FileState;

/** The landmark networks of this computer, for tests that can't do without. */
public final class Installed {
  private Installed() {}

  /**
   * Returns the folder of the networks in the user's own data; skips the test, with a sentence,
   * where one of them is missing or damaged.
   */
  public static Path folder() {
    LandmarkModels models = LandmarkModels.inDataFolder();
    List<String> lacking =
        models.statuses().stream()
            .filter(each -> each.state() != FileState.INSTALLED)
            .map(each -> each.state().word() + " " + each.model().fileName())
            .toList();
    assumeTrue(
        lacking.isEmpty(),
        () ->
            "skipped without the landmark networks (%s in %s): run %s"
                .formatted(String.join(", ", lacking), models.folder(), LandmarkModels.TOOL));
    return models.folder();
  }
}
