package palmturn.work.models;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Properties;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import palmturn.estimate.hands.ModelFile;
import palmturn.estimate.hands.ModelFile.NpmPackage;
import palmturn.settings.PropertiesFile;
import palmturn.trial.UserError;
import palmturn.work.NewFile;

/** The files beside the landmark networks: licence, attribution, date and place of origin. */
final class ModelOrigins {
  private static final String LICENCE = "LICENSE.txt";
  private static final String ATTRIBUTION = "ATTRIBUTION.txt";
  private static final String ORIGIN = "origin.properties";

  static final List<String> FILES = List.of(LICENCE, ATTRIBUTION, ORIGIN);

  private final Path folder;
  private final Properties origin;

  private ModelOrigins(Path folder, Properties origin) {
    this.folder = folder;
    this.origin = origin;
  }

  /** Returns those of a folder. */
  static ModelOrigins in(Path folder) {
    return new ModelOrigins(folder, PropertiesFile.readOrEmpty(folder.resolve(ORIGIN)));
  }

  /** Returns the day on which a file was installed; null where that is not known. */
  @Nullable String on(ModelFile model) {
    return origin.getProperty(model.fileName() + ".on");
  }

  /** Returns where it was brought from; null where that is not known. */
  @Nullable String from(ModelFile model) {
    return origin.getProperty(model.fileName() + ".from");
  }

  /** Writes the licence and the attribution. */
  void write(List<ModelFile> all) throws UserError {
    NewFile.write(folder.resolve(LICENCE), true, licence());
    NewFile.write(
        folder.resolve(ATTRIBUTION), true, attribution(all).getBytes(StandardCharsets.UTF_8));
  }

  /** Records when files were installed, and where they came from. */
  void remember(List<ModelFile> models, LocalDate on, String from) throws UserError {
    for (ModelFile model : models) {
      origin.setProperty(model.fileName() + ".on", on.toString());
      origin.setProperty(model.fileName() + ".from", from);
    }
    Path file = folder.resolve(ORIGIN);
    try {
      PropertiesFile.write(file, origin);
    } catch (IOException e) {
      throw new UserError(file + " can't be written: is the disk full?", e);
    }
  }

  /** Their licence is word for word the program's own, whose text the build puts into the jar. */
  private static byte[] licence() {
    try (InputStream in = ModelOrigins.class.getResourceAsStream("/palmturn/LICENSE")) {
      if (in == null) {
        throw new IllegalStateException("the licence's text is not in the program: build it again");
      }
      return in.readAllBytes();
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
  }

  private static String attribution(List<ModelFile> all) {
    StringBuilder text =
        new StringBuilder(
            """
            The landmark networks in this folder are no part of Palmturn, which has changed nothing in them.
            They are MediaPipe's and come from the npm packages below. The package.json of each gives
            Apache-2.0 as the licence, whose text is in %s. The packages have no NOTICE file and name no
            copyright holder of these files.
            """
                .formatted(LICENCE));
    for (NpmPackage each : NpmPackage.ALL) {
      text.append("\n%s %s\n".formatted(each.packageName(), each.version()));
      text.append(
          all.stream()
              .filter(model -> model.npmPackage() == each)
              .map(ModelOrigins::line)
              .collect(Collectors.joining()));
    }
    return text.toString();
  }

  private static String line(ModelFile model) {
    String within =
        model.packedIn().equals(model.fileName())
            ? ""
            : String.format(
                Locale.ROOT,
                "  cut out of %s, from byte %d on\n",
                model.packedIn(),
                model.packedAt());
    return String.format(
        Locale.ROOT,
        "  %s: %s; %d bytes\n  SHA-256 %s\n%s",
        model.fileName(),
        model.what(),
        model.bytes(),
        model.sha256(),
        within);
  }
}
