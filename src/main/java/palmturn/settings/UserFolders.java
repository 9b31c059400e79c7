package palmturn.settings;

import java.nio.file.Path;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * The folders of this user for settings and data, where the operating system keeps such things.
 * None need be there yet. A system property may name another folder instead.
 */
public final class UserFolders {
  private static final String NAME = "palmturn";

  private UserFolders() {}

  /** Returns the folder of settings; the property {@code palmturn.settings} names another. */
  public static Path settings() {
    String named = System.getProperty("palmturn.settings");
    return named != null
        ? Path.of(named)
        : settings(
            System.getProperty("os.name"),
            Path.of(System.getProperty("user.home")),
            System.getenv("XDG_CONFIG_HOME"));
  }

  /**
   * Returns the folder of a user's settings.
   *
   * @param os the operating system's name
   * @param home the user's folder
   * @param config where the system says that settings belong; null where it does not
   */
  static Path settings(String os, Path home, @Nullable String config) {
    return base(os, config, home, ".config", home.resolve("AppData").resolve("Roaming"))
        .resolve(NAME);
  }

  /**
   * Returns the folder of landmark networks; the property {@code palmturn.models} names another.
   */
  public static Path models() {
    return models(System.getProperty("palmturn.models"));
  }

  /** Returns the folder of landmark networks among this user's data, whatever was named. */
  public static Path modelsInDataFolder() {
    return models(null);
  }

  private static Path models(@Nullable String named) {
    return models(
        named,
        System.getProperty("os.name"),
        Path.of(System.getProperty("user.home")),
        System.getenv("XDG_DATA_HOME"),
        System.getenv("LOCALAPPDATA"));
  }

  /**
   * Returns the folder of a user's landmark networks.
   *
   * @param named the folder that the program was started with; null for the usual one
   * @param os the operating system's name
   * @param home the user's folder
   * @param data where the system says that data belongs; null where it does not
   * @param local where Windows says so; null elsewhere
   */
  static Path models(
      @Nullable String named, String os, Path home, @Nullable String data, @Nullable String local) {
    if (named != null) {
      return Path.of(named);
    }
    Path windows =
        local != null && !local.isBlank()
            ? Path.of(local)
            : home.resolve("AppData").resolve("Local");
    return base(os, data, home, ".local/share", windows).resolve(NAME).resolve("models");
  }

  private static Path base(
      String os, @Nullable String named, Path home, String unix, Path windows) {
    String name = os.toLowerCase(Locale.ROOT);
    if (named != null && !named.isBlank()) {
      return Path.of(named);
    }
    if (name.contains("mac")) {
      return home.resolve("Library").resolve("Application Support");
    }
    return name.contains("windows") ? windows : home.resolve(unix);
  }
}
