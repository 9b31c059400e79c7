package palmturn.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import palmturn.app.keys.Action;
import palmturn.app.keys.KeyBindings;
import palmturn.app.keys.KeyMap;
import palmturn.app.look.Look;
import palmturn.app.look.Theme;
import palmturn.settings.Settings;

class PreferencesTest {
  @TempDir private Path folder;
  private final List<String> trouble = new ArrayList<>();

  @Test
  void keysAndLooksAreTheSameAfterTheNextStart() {
    Look look = new Look();
    KeyBindings keys = start(look);
    keys.set(keys.map().with(Action.PALM, "F9"));
    look.themeProperty().set(Theme.DARK);
    look.larger();
    look.toggleLessMotion();

    Look next = new Look();
    assertEquals("F9", start(next).of(Action.PALM));
    assertEquals(Theme.DARK, next.theme());
    assertEquals(1.25, next.scaleProperty().get());
    assertTrue(next.lessMotion());
    assertEquals(List.of(), trouble);
  }

  @Test
  void wrongFileIsToldInOneLineAndStaysUntilAKeyIsChanged() throws Exception {
    Path file = folder.resolve("settings.properties");
    String wrong = "theme=dark\nkey.palm=J\n";
    Files.writeString(file, wrong);
    Look look = new Look();
    KeyBindings keys = start(look);
    assertEquals(1, trouble.size());
    assertTrue(trouble.get(0).startsWith(file + ": J is given to two actions"), trouble.get(0));
    assertEquals(1, trouble.get(0).lines().count());
    assertEquals(KeyMap.DEFAULT, keys.map());
    assertEquals(Theme.LIGHT, look.theme());

    look.larger();
    assertEquals(wrong, Files.readString(file));
    keys.set(keys.map().with(Action.PALM, "F9"));
    assertEquals("F9", start(new Look()).of(Action.PALM));
  }

  private KeyBindings start(Look look) {
    KeyBindings keys = new KeyBindings();
    Preferences.restore(Settings.in(folder), look, keys, trouble::add);
    return keys;
  }
}
