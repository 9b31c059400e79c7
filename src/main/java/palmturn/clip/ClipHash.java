package palmturn.clip;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/** The SHA-256 of files. */
public final class ClipHash {
  private static final int BUFFER = 1 << 20;

  private ClipHash() {}

  /** Returns a whole file's SHA-256 as a lower-case hex digest. */
  public static String sha256(Path file) throws IOException {
    if (Files.exists(file) && !Files.isRegularFile(file)) {
      // A pipe or a device would be waited for without end.
      throw new FileSystemException(file.toString(), null, "it is not a file");
    }
    MessageDigest digest = digest();
    try (InputStream in = Files.newInputStream(file)) {
      byte[] buffer = new byte[BUFFER];
      for (int read = in.read(buffer); read >= 0; read = in.read(buffer)) {
        digest.update(buffer, 0, read);
      }
    }
    return HexFormat.of().formatHex(digest.digest());
  }

  /** Returns a new SHA-256 digest. */
  public static MessageDigest digest() {
    try {
      return MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }
}
