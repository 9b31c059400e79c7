package palmturn.json;

/** A text that is not the JSON it should be; the message is one line and says where. */
public final class JsonException extends Exception {
  private static final long serialVersionUID = 1L;

  public JsonException(String message) {
    // A file's own words are among it, and a terminal takes some characters for orders.
    super(message.replaceAll("[\\p{Cc}\\p{Zl}\\p{Zp}]", " "));
  }
}
