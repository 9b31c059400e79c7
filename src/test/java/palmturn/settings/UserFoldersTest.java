package palmturn.settings;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;

class UserFoldersTest {
  @Test
  void settingsLieWhereTheSystemKeepsThem() {
    Path home = Path.of("home");
    assertEquals(home.resolve(".config/palmturn"), UserFolders.settings("Linux", home, null));
    assertEquals(Path.of("set/palmturn"), UserFolders.settings("Linux", home, "set"));
    assertEquals(
        home.resolve("Library/Application Support/palmturn"),
        UserFolders.settings("Mac OS X", home, null));
    assertEquals(
        home.resolve("AppData/Roaming/palmturn"), UserFolders.settings("Windows 11", home, null));
  }

  @Test
  void modelsLieWhereTheSystemKeepsAUsersData() {
    Path home = Path.of("home");
    assertEquals(
        Path.of("home/.local/share/palmturn/models"),
        UserFolders.models(null, "Linux", home, null, null));
    assertEquals(
        Path.of("data/palmturn/models"), UserFolders.models(null, "Linux", home, "data", null));
    assertEquals(
        Path.of("home/Library/Application Support/palmturn/models"),
        UserFolders.models(null, "Mac OS X", home, "", null));
    assertEquals(
        Path.of("local/palmturn/models"),
        UserFolders.models(null, "Windows 11", home, null, "local"));
    assertEquals(Path.of("named"), UserFolders.models("named", "Linux", home, "data", null));
  }
}
