package palmturn.work.models;

import java.util.List;
import java.util.stream.Stream;
import palmturn.estimate.hands.ModelFile;
import palmturn.estimate.hands.ModelFile.NpmPackage;

/**
 * A landmark network's file as it must be.
 *
 * @param file its name where it is installed
 * @param what it gives, in a few words
 * @param bytes its length
 * @param sha256 its SHA-256, lower-case hex
 * @param npmPackage the package that it comes from
 * @param packedIn the package's file that holds it: itself, or one that several are packed in
 * @param packedAt the byte at which it starts there
 */
public record RequiredModel(
    String file,
    String what,
    long bytes,
    String sha256,
    NpmPackage npmPackage,
    String packedIn,
    long packedAt) {

  /** Returns all that shape needs. */
  static List<RequiredModel> all() {
    return Stream.of(ModelFile.values()).map(RequiredModel::of).toList();
  }

  private static RequiredModel of(ModelFile file) {
    return new RequiredModel(
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
