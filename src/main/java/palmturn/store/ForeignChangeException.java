package palmturn.store;

import java.nio.file.Path;

/** A file that another program has changed, moved or replaced since it was read here. */
public final class ForeignChangeException extends StoreException {
  private static final long serialVersionUID = 1;

  private ForeignChangeException(String message) {
    super(message);
  }

  static ForeignChangeException of(Path file) {
    return new ForeignChangeException(
        "%s: the file was changed by another program; nothing was written to it".formatted(file));
  }
}
