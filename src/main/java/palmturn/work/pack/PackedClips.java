package palmturn.work.pack;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import palmturn.clip.ClipException;
import palmturn.clip.ClipFile;
import palmturn.store.SessionFolder;
import palmturn.store.StoreException;
import palmturn.trial.Trial;
import palmturn.trial.UserError;

/** The check that a pack's clips are clips of its trials and nothing else. */
final class PackedClips {
  private PackedClips() {}

  /**
   * Checks a session as it was laid out from a pack.
   *
   * @throws UserError if a file among the clips is of no trial, or a trial names another file
   * @throws StoreException if a clip is not the one that its trial names
   * @throws ClipException if a file among the clips is no clip
   */
  static void check(SessionFolder packed)
      throws UserError, StoreException, ClipException, IOException {
    List<Trial> trials = packed.trials();
    Path clips = packed.folder().resolve("clips");
    for (Trial trial : trials) {
      if (!Objects.equals(packed.clipPath(trial).getParent(), clips)) {
        throw new UserError(
            "the pack is refused: %s names a file that is not among the clips"
                .formatted(trial.id().name()));
      }
      if (Files.exists(packed.clipPath(trial))) {
        packed.checkClip(trial);
        ClipFile.open(packed.clipPath(trial));
      }
    }
    try (Stream<Path> files = Files.list(clips)) {
      for (Path file : files.toList()) {
        if (trials.stream().noneMatch(trial -> packed.clipPath(trial).equals(file))) {
          throw new UserError(
              "the pack is refused: clips/%s is the clip of no trial"
                  .formatted(file.getFileName()));
        }
      }
    }
  }
}
