package palmturn.settings;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Properties;
import java.util.TreeMap;

/**
 * The user's choices for the program itself, by name, in {@code settings.properties}. A file that
 * can't be read stays as it is until {@link #replaceDamaged}.
 */
public final class Settings {
  private final Path file;
  private Map<String, String> all;
  private String problem = "";

  private Settings(Path file, Map<String, String> all) {
    this.file = file;
    this.all = Map.copyOf(all);
  }

  /** Returns what lies in the settings; the file is made with the first choice. */
  public static Settings in(Path folder) {
    Path file = folder.resolve("settings.properties");
    if (!Files.exists(file)) {
      return new Settings(file, Map.of());
    }
    try {
      Map<String, String> read = new TreeMap<>();
      Properties kept = PropertiesFile.read(file);
      kept.stringPropertyNames().forEach(name -> read.put(name, kept.getProperty(name)));
      return new Settings(file, read);
    } catch (IOException | IllegalArgumentException e) {
      Settings none = new Settings(file, Map.of());
      none.setAside("it can't be read");
      return none;
    }
  }

  /** Returns every choice by its name. */
  public Map<String, String> all() {
    return all;
  }

  /** Returns what is wrong with the file, in one line; empty when nothing is. */
  public String problem() {
    return problem;
  }

  /** Goes on as if there were no file, which stays as it is. */
  public void setAside(String why) {
    all = Map.of();
    problem =
        "%s: %s; keys and looks are as they came, and the file stays until you change a key"
            .formatted(file, why);
  }

  /** Lets a file that was set aside be replaced. */
  public void replaceDamaged() {
    problem = "";
  }

  /**
   * Keeps these choices in place of all others.
   *
   * @throws SettingsException when they can't be written; they hold until the program ends
   */
  public void save(Map<String, String> choices) throws SettingsException {
    if (!problem.isEmpty() || choices.equals(all)) {
      return;
    }
    all = Map.copyOf(choices);
    Properties kept = new Properties();
    kept.putAll(all);
    try {
      PropertiesFile.write(file, kept);
    } catch (IOException e) {
      throw new SettingsException(
          "%s can't be written (%s): what you chose holds until the program ends"
              .formatted(file, e.getMessage()),
          e);
    }
  }
}
