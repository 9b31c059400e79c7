package palmturn.store;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;
import java.nio.file.NotDirectoryException;

/** I/O errors in a user's words. */
public final class IoErrors {
  private IoErrors() {}

  /** Returns the reason of an error. */
  public static String reason(IOException e) {
    if (e instanceof NoSuchFileException) {
      return "it is not there";
    }
    if (e instanceof AccessDeniedException) {
      return "it is not allowed here";
    }
    if (e instanceof FileAlreadyExistsException) {
      return "something of that name is there already";
    }
    if (e instanceof NotDirectoryException) {
      return "it is not a folder";
    }
    String reason = e instanceof FileSystemException f ? f.getReason() : e.getMessage();
    return reason == null ? e.getClass().getSimpleName() : reason.replaceAll("\\p{Cntrl}", " ");
  }
}
