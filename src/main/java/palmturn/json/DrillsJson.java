package palmturn.json;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import org.jspecify.annotations.Nullable;
import palmturn.advise.Caution;
import palmturn.advise.DrillAim;
import palmturn.advise.DrillLibrary;
import palmturn.advise.LibraryDrill;
import palmturn.advise.TrainedHand;
import palmturn.trial.Coded;

/** The form of the drill library, which a coach may edit and add to. */
public final class DrillsJson {
  private static final Format FORMAT = new Format("palmturn-drills", List.of());
  private static final String STANDARD = "/palmturn/drills.json";
  private static final double MOST_SHARE = 1.5;

  private DrillsJson() {}

  /** Returns the library that comes with the program. */
  public static DrillLibrary standard() {
    try {
      return read(standardText());
    } catch (JsonException e) {
      throw new IllegalStateException(STANDARD + ": " + e.getMessage(), e);
    }
  }

  /** Returns the text of the library that comes with the program, to be edited. */
  public static String standardText() {
    return JsonText.resource(STANDARD);
  }

  /**
   * Reads a library, or changes to one. A key that is not known is refused: it is most likely a
   * slip, and would leave a caution or a dose unsaid.
   *
   * @throws JsonException if the text is damaged, newer than this program, or a drill has a fault;
   *     it names the drill and the key
   */
  public static DrillLibrary read(String text) throws JsonException {
    Keys keys = FORMAT.open(text);
    List<String> leaveOut = keys.texts("leaveOut", code -> code);
    List<LibraryDrill> drills = keys.list("drills", DrillsJson::named);
    keys.refuseRest();
    return keys.make(each -> new DrillLibrary(drills, leaveOut));
  }

  /** A drill's fault names it, so that it is found in a long file. */
  private static LibraryDrill named(Keys keys) throws JsonException {
    try {
      return drill(keys);
    } catch (JsonException e) {
      String code = code(keys);
      throw code == null ? e : new JsonException("drill %s: %s".formatted(code, e.getMessage()));
    }
  }

  private static @Nullable String code(Keys keys) {
    try {
      return keys.textOrNull("code");
    } catch (JsonException e) {
      return null;
    }
  }

  private static LibraryDrill drill(Keys keys) throws JsonException {
    LibraryDrill drill =
        keys.make(
            each ->
                new LibraryDrill(
                    keys.text("code"),
                    requiredText(keys, "name"),
                    keys.texts("qualities", code -> Coded.parse(DrillAim.class, code)),
                    keys.coded("hand", TrainedHand.class),
                    requiredText(keys, "how"),
                    requiredText(keys, "dose"),
                    keys.above0OrNull("paceShare", MOST_SHARE),
                    requiredText(keys, "harder"),
                    requiredText(keys, "retest"),
                    requiredText(keys, "stop"),
                    keys.texts("cautions", code -> Coded.parse(Caution.class, code)),
                    requiredText(keys, "source")));
    keys.refuseRest();
    return drill;
  }

  private static String requiredText(Keys keys, String key) throws JsonException {
    String text = keys.text(key);
    if (text.isBlank()) {
      throw keys.fault(
          key.equals("source")
              ? "source is empty: name it, or write \"%s\"".formatted(LibraryDrill.NO_SOURCE)
              : key + " is empty: say it in a few words");
    }
    return text;
  }

  /** Returns a library's text, as {@code drills --json} prints it. */
  public static String write(DrillLibrary library) {
    ObjectNode root = FORMAT.begin();
    library.leaveOut().forEach(root.putArray("leaveOut")::add);
    root.set(
        "drills",
        RecordForm.all(
            library.drills(),
            "code name qualities=aims hand=trains how dose paceShare harder retest stop cautions"
                + " source"));
    return JsonText.page(root);
  }
}
