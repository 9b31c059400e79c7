package palmturn.store;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.security.MessageDigest;
import java.util.Collections;
import java.util.HashSet;
import java.util.HexFormat;
import java.util.Locale;
import java.util.Set;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import palmturn.clip.ClipHash;
import palmturn.json.JsonException;
import palmturn.json.PackManifest;
import palmturn.trial.TrialId;

/**
 * A reader of packs that may have come from anywhere. Nothing is taken that its manifest doesn't
 * name, under a name that a session doesn't have, or longer or other than the manifest says.
 */
public final class PackReader implements AutoCloseable {
  private static final int MOST_ENTRIES = 20_000;
  private static final int MOST_MANIFEST_BYTES = 8 << 20;

  /** The sum of all files in a pack, bytes: a season's clips in slow motion are less. */
  private static final long MOST_BYTES = 100L << 30;

  /** Marks shrink to a tenth, and clips hardly; a whole pack that grows by more is filling. */
  private static final long MOST_TIMES_SMALLER = 30;

  private static final long SMALL = 16L << 20;

  /** A file's headers in the pack, without its name, which stands in both: bytes. */
  private static final long HEADERS = 30 + 46;

  private final Path file;
  private final ZipFile zip;
  private final PackManifest manifest;

  private PackReader(Path file, ZipFile zip, PackManifest manifest) {
    this.file = file;
    this.zip = zip;
    this.manifest = manifest;
  }

  /**
   * Opens a pack and looks at its list of files.
   *
   * @throws StoreException if it is no pack, or one that can't be trusted
   */
  public static PackReader open(Path file) throws StoreException {
    if (!Files.isRegularFile(file)) {
      throw new StoreException("%s: there is no such file".formatted(file));
    }
    ZipFile zip;
    try {
      zip = new ZipFile(file.toFile(), StandardCharsets.UTF_8);
    } catch (IOException | IllegalArgumentException e) {
      throw new StoreException(
          "%s: is no pack, or is cut off: have it sent again".formatted(file), e);
    }
    try {
      PackManifest manifest = manifest(file, zip);
      checkNames(file, zip, manifest);
      checkSizes(file, zip, manifest);
      return new PackReader(file, zip, manifest);
    } catch (StoreException | RuntimeException e) {
      try {
        zip.close();
      } catch (IOException left) {
        e.addSuppressed(left);
      }
      throw e;
    }
  }

  private static PackManifest manifest(Path file, ZipFile zip) throws StoreException {
    ZipEntry entry = zip.getEntry(PackWriter.MANIFEST);
    if (entry == null) {
      throw new StoreException(
          "%s: is no pack: there is no %s in it".formatted(file, PackWriter.MANIFEST));
    }
    try (InputStream in = zip.getInputStream(entry)) {
      byte[] bytes = in.readNBytes(MOST_MANIFEST_BYTES + 1);
      if (bytes.length > MOST_MANIFEST_BYTES) {
        throw refused(file, "its list of files is too long to be real");
      }
      return PackManifest.read(
          StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString());
    } catch (IOException | IllegalArgumentException e) {
      throw new StoreException(
          "%s: its list of files can't be read: have it sent again".formatted(file), e);
    } catch (JsonException e) {
      throw new StoreException("%s: %s".formatted(file, e.getMessage()), e);
    }
  }

  private static void checkNames(Path file, ZipFile zip, PackManifest manifest)
      throws StoreException {
    if (zip.size() > MOST_ENTRIES) {
      throw refused(
          file, String.format(Locale.ROOT, "%d files in it are too many to be real", zip.size()));
    }
    Set<String> named = new HashSet<>();
    for (PackManifest.Entry entry : manifest.entries()) {
      if (!known(entry.name())) {
        throw refused(file, "\"%s\" is no file of a session".formatted(shown(entry.name())));
      }
      if (!named.add(entry.name().toLowerCase(Locale.ROOT))) {
        throw refused(file, "\"%s\" is in it twice".formatted(shown(entry.name())));
      }
    }
    Set<String> there = new HashSet<>();
    for (ZipEntry entry : Collections.list(zip.entries())) {
      String name = entry.getName();
      if (!there.add(name.toLowerCase(Locale.ROOT))) {
        throw refused(file, "\"%s\" is in it twice".formatted(shown(name)));
      }
      if (!name.equals(PackWriter.MANIFEST) && !named.contains(name.toLowerCase(Locale.ROOT))) {
        throw refused(file, "\"%s\" is not in its list of files".formatted(shown(name)));
      }
    }
    for (PackManifest.Entry entry : manifest.entries()) {
      ZipEntry packed = zip.getEntry(entry.name());
      if (packed == null || packed.isDirectory()) {
        throw refused(file, "\"%s\" is missing from it".formatted(shown(entry.name())));
      }
    }
  }

  private static void checkSizes(Path file, ZipFile zip, PackManifest manifest)
      throws StoreException {
    long length = file.toFile().length();
    double packed = 0;
    for (ZipEntry entry : Collections.list(zip.entries())) {
      packed += HEADERS + 2.0 * entry.getName().length() + Math.max(0, entry.getCompressedSize());
    }
    if (packed > length) {
      throw refused(file, "its files lie over each other");
    }
    double bytes = manifest.entries().stream().mapToDouble(PackManifest.Entry::bytes).sum();
    if (bytes > MOST_BYTES || bytes > SMALL + (double) MOST_TIMES_SMALLER * length) {
      throw refused(
          file,
          String.format(
              Locale.ROOT,
              "its %.0f MB would grow to %.0f MB, too much to be real",
              length / 1e6,
              bytes / 1e6));
    }
  }

  /** Returns whether a session has a file of such a name. */
  private static boolean known(String name) {
    if (name.equals(Layout.SESSION) || Layout.OWN.contains(name)) {
      return true;
    }
    String[] parts = name.split("/", -1);
    if (parts.length != 2 || !SessionPaths.isInside(name)) {
      return false;
    }
    String inside = parts[1];
    return switch (parts[0]) {
      case Layout.TRIALS -> inside.endsWith(".json") && trial(inside);
      case Layout.CLIPS -> SessionPaths.safeName(inside).equals(inside);
      // Packs of older versions hold reports, which are not taken: a page may be anyone's.
      case Layout.REPORT -> true;
      default -> false;
    };
  }

  private static boolean trial(String fileName) {
    try {
      TrialId.parse(fileName.substring(0, fileName.length() - ".json".length()));
      return true;
    } catch (IllegalArgumentException e) {
      return false;
    }
  }

  /** A name from outside could hold what a terminal takes for orders. */
  private static String shown(String name) {
    String plain = name.replaceAll("[^\\p{Print}]", "?");
    return plain.length() > 80 ? plain.substring(0, 80) + "…" : plain;
  }

  private static StoreException refused(Path file, String why) {
    return new StoreException("%s: refused: %s".formatted(file, why));
  }

  /** Returns what lies in it. */
  public PackManifest manifest() {
    return manifest;
  }

  /**
   * Lays a session out from the pack in an empty folder; reports are left out.
   *
   * @throws StoreException if anything in the pack is not what its manifest says, or the folder
   *     can't be written; what was written by then stays there
   */
  public void layOut(Path folder) throws StoreException {
    try {
      checkRoom(folder);
      for (String name : Layout.FOLDERS) {
        Files.createDirectories(folder.resolve(name));
      }
      for (PackManifest.Entry entry : manifest.entries()) {
        if (!isReport(entry)) {
          copy(entry, folder.resolve(entry.name()));
        }
      }
    } catch (IOException e) {
      throw new StoreException("%s: can't be unpacked: %s".formatted(file, IoErrors.reason(e)), e);
    }
  }

  /** Returns whether there are reports in it, which are never taken from a pack. */
  public boolean hasReports() {
    return manifest.entries().stream().anyMatch(PackReader::isReport);
  }

  private static boolean isReport(PackManifest.Entry entry) {
    return entry.name().startsWith(Layout.REPORT + "/");
  }

  private void checkRoom(Path folder) throws IOException, StoreException {
    long bytes = manifest.entries().stream().mapToLong(PackManifest.Entry::bytes).sum();
    // 0 where it can't be told, as in a root of its own whose disk is not in the list of mounts.
    long room = folder.toFile().getUsableSpace();
    if (bytes < 0 || room > 0 && bytes > room) {
      throw new StoreException(
          String.format(
              Locale.ROOT,
              "%s: needs %d MB, and %d MB are free on this disk",
              file,
              bytes / 1_000_000,
              room / 1_000_000));
    }
  }

  private void copy(PackManifest.Entry entry, Path to) throws IOException, StoreException {
    MessageDigest digest = ClipHash.digest();
    long left = entry.bytes();
    byte[] buffer = new byte[1 << 16];
    try (InputStream in = zip.getInputStream(zip.getEntry(entry.name()));
        OutputStream out = Files.newOutputStream(to, StandardOpenOption.CREATE_NEW)) {
      for (int read = in.read(buffer); read >= 0; read = in.read(buffer)) {
        left -= read;
        if (left < 0) {
          break;
        }
        digest.update(buffer, 0, read);
        out.write(buffer, 0, read);
      }
    }
    if (left != 0 || !HexFormat.of().formatHex(digest.digest()).equals(entry.sha256())) {
      throw refused(
          file,
          "\"%s\" is not what its list of files says: have it sent again"
              .formatted(shown(entry.name())));
    }
  }

  @Override
  public void close() throws StoreException {
    try {
      zip.close();
    } catch (IOException e) {
      throw new StoreException("%s: can't be closed: %s".formatted(file, IoErrors.reason(e)), e);
    }
  }
}
