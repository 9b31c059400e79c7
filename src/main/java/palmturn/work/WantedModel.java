package palmturn.work;

import java.util.List;
import java.util.stream.Stream;
import palmturn.estimate.hands.ModelFile;
import palmturn.estimate.hands.ModelFile.NpmPackage;

/**
 * A landmark network's file as it has to be.
 *
 * @param file its name where it is installed
 * @param what it gives, in a few words
 * @param bytes its length
 * @param sha256 its sum, in small hexadecimal letters
 * @param npmPackage the package that it comes from
 * @param packedIn the package's file that holds it: itself, or one that several are packed in
 * @param packedAt the byte at which it starts there
 */
public record WantedModel(
    String file,
    String what,
    long bytes,
    String sha256,
    NpmPackage npmPackage,
    String packedIn,
    long packedAt) {

  /** Returns all that shape needs. */
  static List<WantedModel> all() {
    return Stream.of(ModelFile.values()).map(WantedModel::of).toList();
  }

  private static WantedModel of(ModelFile file) {
    return new WantedModel(
        file.fileName(),
        file.what(),
        file.bytes(),
        file.sha256(),
        file.npmPackage(),
        file.packedIn(),
        file.packedAt());
  }

  /** Returns the package with its one version, as npm writes it. */
  public String packageAndVersion() {
    return npmPackage.packageName() + "@" + npmPackage.version();
  }
}
