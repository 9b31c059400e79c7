package palmturn.trial;

import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * A reference to the file that a trial was filmed in.
 *
 * @param path relative to the session's folder, with forward slashes
 * @param sha256 of the whole file, lower-case hex digest
 * @param originalSha256 of the file that this one was made from for sending, with the same moments;
 *     null for one as it was filmed
 * @param cropped whether it was cut to the hands for sending; what it was made from is then not
 *     told
 * @param medianFrameS median distance between frames, media seconds
 * @param extra unknown keys
 */
public record ClipRef(
    String path,
    String sha256,
    @Nullable String originalSha256,
    boolean cropped,
    double medianFrameS,
    Extra extra) {

  /** A clip as it was filmed. */
  public ClipRef(String path, String sha256, double medianFrameS, Extra extra) {
    this(path, sha256, null, false, medianFrameS, extra);
  }

  /**
   * Returns whether two files of one trial show the same film: one is the other, or both are made
   * of one. Of one that was cut to the hands no more can be told than that its frames fit.
   */
  public boolean sameFilm(ClipRef other) {
    return (cropped || other.cropped) && medianFrameS == other.medianFrameS
        || other.hashes().stream().anyMatch(hashes()::contains);
  }

  private Set<String> hashes() {
    return Stream.of(sha256, originalSha256 == null ? sha256 : originalSha256)
        .collect(Collectors.toSet());
  }

  /** Returns the same file under another path. */
  public ClipRef withPath(String newPath) {
    return new ClipRef(newPath, sha256, originalSha256, cropped, medianFrameS, extra);
  }

  /** Returns the file that was made from this one for sending. */
  public ClipRef sentAs(String newPath, String newSha256) {
    return new ClipRef(
        newPath,
        newSha256,
        cropped ? null : originalSha256 == null ? sha256 : originalSha256,
        cropped,
        medianFrameS,
        extra);
  }

  /** Returns the file that was cut to the hands from this one, without a trace of this one. */
  public ClipRef croppedAs(String newPath, String newSha256) {
    return new ClipRef(newPath, newSha256, null, true, medianFrameS, extra);
  }
}
