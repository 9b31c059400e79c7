package palmturn;

import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Map;
import org.junit.jupiter.api.Test;

class AppStartTest {
  private static final Map<String, String> DISPLAY = Map.of("DISPLAY", ":0");

  @Test
  void aLinuxWithoutGtkIsToldWhichPackage() {
    String why = AppStart.missing("Linux", DISPLAY, name -> false);
    assertTrue(why.contains("libgtk-3-0"), why);
    assertTrue(why.lines().count() == 1, why);
  }

  @Test
  void aLinuxWithoutDisplayIsToldSo() {
    assertTrue(AppStart.missing("Linux", Map.of(), name -> true).contains("DISPLAY"));
  }

  @Test
  void otherSystemsAndACompleteLinuxLackNothing() {
    assertNull(AppStart.missing("Linux", DISPLAY, name -> name.equals("libgtk-3.so.0")));
    assertNull(AppStart.missing("Mac OS X", Map.of(), name -> false));
    assertNull(AppStart.missing("Windows 11", Map.of(), name -> false));
  }
}
