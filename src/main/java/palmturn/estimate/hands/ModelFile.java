package palmturn.estimate.hands;

import java.util.List;

/**
 * A file of the landmark networks, known by its SHA-256. The files are no part of the program: the
 * user installs them, and without them all else works.
 *
 * @param fileName its name in the folder where it is installed
 * @param what it gives, in a few words
 * @param bytes its length
 * @param sha256 its SHA-256, lower-case hex
 * @param npmPackage the package that it comes from
 * @param packedIn the package's file that holds it: itself, or one that several are packed in
 * @param packedAt the byte at which it starts there
 */
public record ModelFile(
    String fileName,
    String what,
    long bytes,
    String sha256,
    NpmPackage npmPackage,
    String packedIn,
    long packedAt) {

  public static final ModelFile PALM_DETECTION_FULL =
      new ModelFile(
          "palm_detection_full.tflite",
          "finds palms in a picture",
          2_341_280,
          "2f25e740121983f68ffc05f99991d524dc0ea812134f6316a26125816941ee85",
          NpmPackage.HANDS,
          "hands_solution_packed_assets.data",
          11);

  public static final ModelFile HAND_LANDMARK_FULL =
      new ModelFile(
          "hand_landmark_full.tflite",
          "21 points of a hand",
          5_478_688,
          "8c026882c9ec059ce0f8e75266bee5a9a23c341a40e0000df755374d3d1b9b68",
          NpmPackage.HANDS,
          "hand_landmark_full.tflite",
          0);

  public static final ModelFile HAND_LANDMARK_LITE =
      new ModelFile(
          "hand_landmark_lite.tflite",
          "21 points of a hand, faster and less exact",
          2_071_408,
          "d7fde8ac11f8ce03f8663775bfc323f4fc9f2a38062b4f4efa142874ef5b2a48",
          NpmPackage.HANDS,
          "hand_landmark_lite.tflite",
          0);

  public static final ModelFile POSE_LANDMARK_FULL =
      new ModelFile(
          "pose_landmark_full.tflite",
          "33 points of a body",
          6_440_512,
          "e9a5c5cb17f736fafd4c2ec1da3b3d331d6edbe8a0d32395855aeb2cdfd64b9f",
          NpmPackage.POSE,
          "pose_landmark_full.tflite",
          0);

  public static final ModelFile POSE_LANDMARK_LITE =
      new ModelFile(
          "pose_landmark_lite.tflite",
          "33 points of a body, faster and less exact",
          2_819_824,
          "f17bfbecadb61c3be1baa8b8d851cc6619c870a87167b32848ad20db306b9d61",
          NpmPackage.POSE,
          "pose_landmark_lite.tflite",
          0);

  /** All that shape needs. */
  public static final List<ModelFile> ALL =
      List.of(
          PALM_DETECTION_FULL,
          HAND_LANDMARK_FULL,
          HAND_LANDMARK_LITE,
          POSE_LANDMARK_FULL,
          POSE_LANDMARK_LITE);

  /**
   * A package, whose package.json gives Apache-2.0 as its licence.
   *
   * @param packageName the name with its scope
   * @param version the one whose files have the sums given here
   * @param packedBytes its length as it is brought
   */
  public record NpmPackage(String packageName, String version, long packedBytes) {
    static final NpmPackage HANDS =
        new NpmPackage("@mediapipe/hands", "0.4.1675469240", 13_207_873);
    static final NpmPackage POSE = new NpmPackage("@mediapipe/pose", "0.5.1675469404", 40_985_403);

    /** Both packages. */
    public static final List<NpmPackage> ALL = List.of(HANDS, POSE);

    /** Returns the package with its version, as npm writes it. */
    public String nameAndVersion() {
      return packageName + "@" + version;
    }
  }
}
