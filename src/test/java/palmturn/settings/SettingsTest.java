package palmturn.settings;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SettingsTest {
  @TempDir private Path folder;

  @Test
  void choicesAreThereForTheNextProgram() throws Exception {
    Map<String, String> chosen = Map.of("key.next", "Ctrl+→", "key.wider", "=", "theme", "dark");
    Settings.in(folder.resolve("deep")).save(chosen);
    assertEquals(chosen, Settings.in(folder.resolve("deep")).all());
  }

  @Test
  void fileThatCannotBeReadStaysUntilItIsTakenOver() throws Exception {
    Path file = folder.resolve("settings.properties");
    Files.writeString(file, "theme=\\u12");
    Settings settings = Settings.in(folder);
    assertTrue(settings.problem().startsWith(file + ": it can't be read; "));
    settings.save(Map.of("theme", "dark"));
    assertEquals("theme=\\u12", Files.readString(file));
    settings.replaceDamaged();
    settings.save(Map.of("theme", "dark"));
    assertEquals(Map.of("theme", "dark"), Settings.in(folder).all());
  }

  @Test
  void whereNothingCanBeWrittenTheChoiceStillHolds() throws Exception {
    Path blocked = Files.writeString(folder.resolve("file"), "");
    Settings settings = Settings.in(blocked.resolve("in"));
    assertThrows(SettingsException.class, () -> settings.save(Map.of("theme", "dark")));
    assertEquals(Map.of("theme", "dark"), settings.all());
  }
}
