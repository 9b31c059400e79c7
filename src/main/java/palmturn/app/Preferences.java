package palmturn.app;

import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Consumer;
import java.util.stream.Stream;
import palmturn.app.keys.KeyBindings;
import palmturn.app.keys.KeyMap;
import palmturn.app.look.Look;
import palmturn.app.look.Theme;
import palmturn.settings.Settings;
import palmturn.settings.SettingsException;

/** The user's keys, theme, size of text and motion, saved between two starts of the program. */
record Preferences(Settings settings, Look look, KeyBindings keys, Consumer<String> problems) {
  private static final String KEY = "key.";
  private static final String THEME = "theme";
  private static final String TEXT = "textPct";
  private static final String LESS_MOTION = "lessMotion";

  /**
   * Restores everything as it was left, and saves what changes from now on.
   *
   * @param problems gets one line about settings that can't be read or written
   */
  static void restore(Settings settings, Look look, KeyBindings keys, Consumer<String> problems) {
    Preferences preferences = new Preferences(settings, look, keys, problems);
    preferences.read();
    look.themeProperty().addListener(changed -> preferences.save());
    look.scaleProperty().addListener(changed -> preferences.save());
    look.lessMotionProperty().addListener(changed -> preferences.save());
    keys.mapProperty()
        .addListener(
            (map, before, now) -> {
              settings.replaceDamaged();
              preferences.save();
            });
  }

  private void read() {
    Map<String, String> all = settings.all();
    try {
      Map<String, String> named = new TreeMap<>();
      all.forEach(
          (name, value) -> {
            if (name.startsWith(KEY)) {
              named.put(name.substring(KEY.length()), value);
            }
          });
      KeyMap map = KeyMap.fromSettings(named);
      Theme theme = theme(all.getOrDefault(THEME, "light"));
      int textPct = textPct(all.getOrDefault(TEXT, "100"));
      boolean lessMotion = Boolean.parseBoolean(all.get(LESS_MOTION));
      keys.set(map);
      look.themeProperty().set(theme);
      look.setScale(textPct / 100.0);
      look.lessMotionProperty().set(lessMotion);
    } catch (IllegalArgumentException e) {
      settings.setAside(String.valueOf(e.getMessage()));
    }
    if (!settings.problem().isEmpty()) {
      problems.accept(settings.problem());
    }
  }

  private static Theme theme(String name) {
    return Stream.of(Theme.values())
        .filter(each -> name(each).equals(name))
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException("no theme is called " + name));
  }

  private static String name(Theme theme) {
    return theme.name().toLowerCase(Locale.ROOT);
  }

  private static int textPct(String digits) {
    if (!digits.matches("[12][0-9]{2}")) {
      throw new IllegalArgumentException("textPct is not 100 to 200");
    }
    return Integer.parseInt(digits);
  }

  private void save() {
    Map<String, String> all = new TreeMap<>();
    all.put(THEME, name(look.theme()));
    all.put(TEXT, Long.toString(Math.round(100 * look.scaleProperty().get())));
    all.put(LESS_MOTION, Boolean.toString(look.lessMotion()));
    keys.map().toSettings().forEach((name, chord) -> all.put(KEY + name, chord));
    try {
      settings.save(all);
    } catch (SettingsException e) {
      problems.accept(e.getMessage());
    }
  }
}
