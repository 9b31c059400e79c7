package palmturn.json;

import com.fasterxml.jackson.databind.node.ObjectNode;
import org.jspecify.annotations.Nullable;
import palmturn.trial.Coded;
import palmturn.trial.Hand;

/**
 * Whom a line of many estimates is of, and why there is none where it failed.
 *
 * @param clip the file as it was named, or its path in the session; null for a whole session that
 *     can't be opened
 * @param session the session's folder as it was named, null for a clip outside one
 * @param trial the trial's name, null for a clip outside a session
 * @param hand the moving hand; null for a whole session
 * @param clipSha256 null where the clip can't be read
 * @param error null where the line holds an estimate
 */
public record EstimateLine(
    @Nullable String clip,
    @Nullable String session,
    @Nullable String trial,
    @Nullable Hand hand,
    @Nullable String clipSha256,
    @Nullable String error) {

  /**
   * Reads a line, without the line break at its end; what an estimate found is passed over.
   *
   * @throws JsonException if it is not whole, or no such line
   */
  public static EstimateLine read(String line) throws JsonException {
    Keys keys = Keys.of(JsonText.parse(line), "$");
    EstimateLine read =
        new EstimateLine(
            keys.textOrNull("clip"),
            keys.textOrNull("session"),
            keys.textOrNull("trial"),
            keys.parsedOrNull("hand", code -> Coded.parse(Hand.class, code)),
            keys.parsedOrNull("clipSha256", TrialJson::sha256),
            keys.textOrNull("error"));
    if (read.clip == null && read.session == null) {
      throw keys.fault("names neither a clip nor a session");
    }
    return read;
  }

  /** Returns whether a text begins as such a line does, so that it may be the half of one. */
  public static boolean begins(String text) {
    String head = "{\"clip\":";
    return text.startsWith(head.substring(0, Math.min(text.length(), head.length())));
  }

  /** Returns the line that says why there is no estimate. */
  public String line() {
    return JsonText.line(head().put("error", error));
  }

  /** Returns the keys that every line begins with. */
  ObjectNode head() {
    return RecordForm.of(this, "clip session trial hand clipSha256");
  }
}
