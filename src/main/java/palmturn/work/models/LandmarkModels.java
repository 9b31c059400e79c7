package palmturn.work.models;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import palmturn.clip.ClipHash;
import palmturn.clip.Progress;
import palmturn.estimate.hands.ModelFile;
import palmturn.json.ModelsJson;
import palmturn.settings.UserFolders;
import palmturn.trial.UserError;
import palmturn.work.NewFile;

/**
 * The landmark networks in this user's data folder: their state, and their installation from
 * packages already downloaded. Nothing here fetches anything.
 */
public final class LandmarkModels {
  /** The command that fetches and installs them. */
  public static final String TOOL = "tools/get-landmark-models";

  /** Their licence, by its SPDX name. */
  public static final String LICENCE = "Apache-2.0";

  private final Path folder;
  private final List<ModelFile> wanted;

  /** The state of a file. */
  public enum FileState {
    INSTALLED,
    MISSING,
    /** There, but not with the sum that it has to have. */
    DAMAGED;

    /** Returns the word that is shown and printed. */
    public String word() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  /**
   * A file and how it stands.
   *
   * @param model as it has to be
   * @param state as it is
   * @param on the day it was installed; null where that is not known
   * @param from where it was brought from; null where that is not known
   */
  public record ModelStatus(
      ModelFile model, FileState state, @Nullable String on, @Nullable String from) {}

  LandmarkModels(Path folder, List<ModelFile> wanted) {
    this.folder = folder;
    this.wanted = List.copyOf(wanted);
  }

  /** Returns those of this user, where the program looks for them; none need be there. */
  public static LandmarkModels ofThisUser() {
    return new LandmarkModels(UserFolders.models(), ModelFile.ALL);
  }

  /** Returns those in this user's data folder, wherever the program was told to look. */
  public static LandmarkModels inDataFolder() {
    return new LandmarkModels(UserFolders.modelsInDataFolder(), ModelFile.ALL);
  }

  /** Returns where they lie, or would. */
  public Path folder() {
    return folder;
  }

  /** Returns where they lie if all are there and whole, null otherwise; reads them all. */
  public @Nullable Path installed() {
    return wanted.stream().allMatch(model -> state(model) == FileState.INSTALLED) ? folder : null;
  }

  /** Returns the names of files that are there but not as they were published. */
  public List<String> damaged() {
    return wanted.stream()
        .filter(model -> state(model) == FileState.DAMAGED)
        .map(ModelFile::fileName)
        .toList();
  }

  /** Returns every file with how it stands; reads all that are there. */
  public List<ModelStatus> statuses() {
    ModelOrigins papers = ModelOrigins.in(folder);
    return wanted.stream()
        .map(
            model -> {
              FileState state = state(model);
              boolean there = state == FileState.INSTALLED;
              return new ModelStatus(
                  model, state, there ? papers.on(model) : null, there ? papers.from(model) : null);
            })
        .toList();
  }

  private FileState state(ModelFile model) {
    Path file = folder.resolve(model.fileName());
    try {
      if (!Files.exists(file)) {
        return FileState.MISSING;
      }
      return Files.size(file) == model.bytes() && ClipHash.sha256(file).equals(model.sha256())
          ? FileState.INSTALLED
          : FileState.DAMAGED;
    } catch (IOException e) {
      return FileState.DAMAGED;
    }
  }

  /**
   * Puts those that are missing or damaged in place; all are checked before the first is written.
   *
   * @param from a folder with the unpacked packages somewhere in it, or with the files alone
   * @param origin where they were brought from, in words that are kept beside them
   * @param on today
   * @return what was put in place
   * @throws UserError if one is not there or has a wrong sum, or the folder can't be written
   */
  public List<ModelFile> install(Path from, String origin, LocalDate on, Progress progress)
      throws UserError {
    ModelSearch search = ModelSearch.in(from);
    List<ModelFile> needed =
        statuses().stream()
            .filter(each -> each.state() != FileState.INSTALLED)
            .map(ModelStatus::model)
            .toList();
    Map<ModelFile, byte[]> contents = new LinkedHashMap<>();
    for (ModelFile model : needed) {
      if (progress.stopped()) {
        throw new UserError("stopped; nothing was installed");
      }
      progress.at((double) contents.size() / needed.size(), model.fileName());
      contents.put(model, search.content(model));
    }
    makeFolder();
    ModelOrigins papers = ModelOrigins.in(folder);
    papers.write(wanted);
    for (Map.Entry<ModelFile, byte[]> each : contents.entrySet()) {
      NewFile.write(folder.resolve(each.getKey().fileName()), true, each.getValue());
    }
    papers.remember(needed, on, origin);
    progress.at(1, "");
    return needed;
  }

  private void makeFolder() throws UserError {
    try {
      Files.createDirectories(folder);
    } catch (IOException e) {
      throw new UserError(
          folder + " can't be made: may you write there, and is no file in its way?", e);
    }
  }

  /**
   * Takes them away, with their papers, and leaves everything else.
   *
   * @return how many files were taken away
   */
  public int remove() throws UserError {
    int removed = 0;
    try {
      for (ModelFile model : wanted) {
        removed += Files.deleteIfExists(folder.resolve(model.fileName())) ? 1 : 0;
      }
      for (String paper : ModelOrigins.FILES) {
        Files.deleteIfExists(folder.resolve(paper));
      }
      if (Files.isDirectory(folder) && empty()) {
        Files.delete(folder);
      }
    } catch (IOException e) {
      throw new UserError(folder + " can't be cleared: may you write there?", e);
    }
    return removed;
  }

  private boolean empty() throws IOException {
    try (Stream<Path> inside = Files.list(folder)) {
      return inside.findAny().isEmpty();
    }
  }

  /** Returns how they stand, in the fixed form of scripts. */
  public String json(List<ModelStatus> standings) {
    return ModelsJson.write(
        folder.toString(),
        LICENCE,
        standings.stream()
            .map(
                each ->
                    new ModelsJson.Model(
                        each.model().fileName(),
                        each.model().what(),
                        each.state().word(),
                        each.model().bytes(),
                        each.model().sha256(),
                        each.model().npmPackage().packageName(),
                        each.model().npmPackage().version(),
                        each.on(),
                        each.from()))
            .toList());
  }
}
