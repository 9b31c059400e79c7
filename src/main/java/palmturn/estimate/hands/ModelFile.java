package palmturn.estimate.hands;

/**
 * The files of the landmark networks, each known by its SHA-256, and the npm package that each
 * comes from. They are no part of the program: the user installs them, and without them all else
 * works.
 */
public enum ModelFile {
  PALM_DETECTION_FULL(
      "palm_detection_full.tflite",
      "finds palms in a picture",
      2_341_280,
      "2f25e740121983f68ffc05f99991d524dc0ea812134f6316a26125816941ee85",
      NpmPackage.HANDS,
      "hands_solution_packed_assets.data",
      11),
  HAND_LANDMARK_FULL(
      "hand_landmark_full.tflite",
      "21 points of a hand",
      5_478_688,
      "8c026882c9ec059ce0f8e75266bee5a9a23c341a40e0000df755374d3d1b9b68",
      NpmPackage.HANDS),
  HAND_LANDMARK_LITE(
      "hand_landmark_lite.tflite",
      "21 points of a hand, faster and less exact",
      2_071_408,
      "d7fde8ac11f8ce03f8663775bfc323f4fc9f2a38062b4f4efa142874ef5b2a48",
      NpmPackage.HANDS),
  POSE_LANDMARK_FULL(
      "pose_landmark_full.tflite",
      "33 points of a body",
      6_440_512,
      "e9a5c5cb17f736fafd4c2ec1da3b3d331d6edbe8a0d32395855aeb2cdfd64b9f",
      NpmPackage.POSE),
  POSE_LANDMARK_LITE(
      "pose_landmark_lite.tflite",
      "33 points of a body, faster and less exact",
      2_819_824,
      "f17bfbecadb61c3be1baa8b8d851cc6619c870a87167b32848ad20db306b9d61",
      NpmPackage.POSE);

  /** The packages, whose package.json gives Apache-2.0 as their licence. */
  public enum NpmPackage {
    HANDS("@mediapipe/hands", "0.4.1675469240", 13_207_873),
    POSE("@mediapipe/pose", "0.5.1675469404", 40_985_403);

    private final String packageName;
    private final String version;
    private final long packedBytes;

    NpmPackage(String packageName, String version, long packedBytes) {
      this.packageName = packageName;
      this.version = version;
      this.packedBytes = packedBytes;
    }

    /** Returns the name with its scope. */
    public String packageName() {
      return packageName;
    }

    /** Returns the one version whose files have the sums given here. */
    public String version() {
      return version;
    }

    /** Returns how large it is when it is brought. */
    public long packedBytes() {
      return packedBytes;
    }
  }

  private final String fileName;
  private final String what;
  private final long bytes;
  private final String sha256;
  private final NpmPackage npmPackage;
  private final String packedIn;
  private final long packedAt;

  ModelFile(String fileName, String what, long bytes, String sha256, NpmPackage npmPackage) {
    this(fileName, what, bytes, sha256, npmPackage, fileName, 0);
  }

  ModelFile(
      String fileName,
      String what,
      long bytes,
      String sha256,
      NpmPackage npmPackage,
      String packedIn,
      long packedAt) {
    this.fileName = fileName;
    this.what = what;
    this.bytes = bytes;
    this.sha256 = sha256;
    this.npmPackage = npmPackage;
    this.packedIn = packedIn;
    this.packedAt = packedAt;
  }

  /** Returns its name in the folder where it is installed. */
  public String fileName() {
    return fileName;
  }

  /** Returns what it gives, in a few words. */
  public String what() {
    return what;
  }

  /** Returns its length. */
  public long bytes() {
    return bytes;
  }

  /** Returns its sum, in small hexadecimal letters. */
  public String sha256() {
    return sha256;
  }

  /** Returns the package that it comes from. */
  public NpmPackage npmPackage() {
    return npmPackage;
  }

  /** Returns the package's file that holds it: itself, or one that several are packed in. */
  public String packedIn() {
    return packedIn;
  }

  /** Returns the byte at which it starts there. */
  public long packedAt() {
    return packedAt;
  }
}
