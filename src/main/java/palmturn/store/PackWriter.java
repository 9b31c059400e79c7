package palmturn.store;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.DigestOutputStream;
import java.security.MessageDigest;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import palmturn.clip.ClipHash;
import palmturn.json.PackManifest;
import palmturn.trial.Session;

/**
 * A writer of packs: a plain ZIP file whose manifest names every other file by length and SHA-256.
 */
public final class PackWriter implements AutoCloseable {
  /** Name of the manifest in the pack. */
  static final String MANIFEST = "palmturn-pack.json";

  private final Path file;
  private final ZipOutputStream zip;
  private final List<PackManifest.Entry> entries = new ArrayList<>();
  private boolean finished;

  private PackWriter(Path file, ZipOutputStream zip) {
    this.file = file;
    this.zip = zip;
  }

  /**
   * Begins a pack.
   *
   * @throws IOException if it can't be written there
   */
  public static PackWriter create(Path file) throws IOException {
    return new PackWriter(
        file, new ZipOutputStream(Files.newOutputStream(file), StandardCharsets.UTF_8));
  }

  /** Adds a text. */
  public void add(String name, String text) throws IOException {
    add(name, out -> out.write(text.getBytes(StandardCharsets.UTF_8)));
  }

  /** Adds a file. */
  public void add(String name, Path content) throws IOException {
    add(
        name,
        out -> {
          try (InputStream in = Files.newInputStream(content)) {
            in.transferTo(out);
          }
        });
  }

  private interface Content {
    void writeTo(OutputStream out) throws IOException;
  }

  private void add(String name, Content content) throws IOException {
    zip.putNextEntry(entry(name));
    MessageDigest digest = ClipHash.digest();
    Counted counted = new Counted(zip);
    content.writeTo(new DigestOutputStream(counted, digest));
    zip.closeEntry();
    entries.add(
        new PackManifest.Entry(name, HexFormat.of().formatHex(digest.digest()), counted.bytes));
  }

  /** The pack tells when it was made in its manifest alone. */
  private static ZipEntry entry(String name) {
    ZipEntry entry = new ZipEntry(name);
    entry.setTime(0);
    return entry;
  }

  /**
   * Ends the pack: only after this is it whole.
   *
   * @throws StoreException if {@link PackReader} would refuse it
   */
  public void finish(Session session, Instant at) throws IOException, StoreException {
    zip.putNextEntry(entry(MANIFEST));
    zip.write(
        new PackManifest(session.athlete(), session.date(), at, entries)
            .write()
            .getBytes(StandardCharsets.UTF_8));
    zip.closeEntry();
    zip.close();
    PackReader.open(file).close();
    finished = true;
  }

  /** Lets go; a pack that was not finished is taken away. */
  @Override
  public void close() throws IOException {
    if (!finished) {
      try {
        zip.close();
      } finally {
        Files.deleteIfExists(file);
      }
    }
  }

  private static final class Counted extends OutputStream {
    private final OutputStream out;
    private long bytes;

    Counted(OutputStream out) {
      this.out = out;
    }

    @Override
    public void write(int one) throws IOException {
      out.write(one);
      bytes++;
    }

    @Override
    public void write(byte[] some, int from, int count) throws IOException {
      out.write(some, from, count);
      bytes += count;
    }
  }
}
