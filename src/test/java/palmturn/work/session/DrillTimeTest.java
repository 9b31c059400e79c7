package palmturn.work.session;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import palmturn.trial.UserError;

class DrillTimeTest {
  private static final LocalDate DAY = LocalDate.of(2026, 11, 14);
  private static final ZoneId ZONE = ZoneId.of("Europe/Copenhagen");

  @Test
  void aTimeAloneIsOfTheSessionsDayAndAnyOtherNamesItsOwn() throws Exception {
    DrillTime evening = new DrillTime(at("2026-11-14T16:30:00Z"), at("2026-11-14T16:50:00Z"));
    assertEquals(evening, read("17:30", "17:50"));
    assertEquals(evening, read("2026-11-14 17:30", "2026-11-14T17:50"));
    assertEquals(evening, read("2026-11-14T16:30:00Z", "2026-11-14T17:50:00+01:00"));
    assertEquals(
        new DrillTime(at("2026-11-13T22:50:00Z"), at("2026-11-13T23:10:00Z")),
        read("2026-11-13 23:50", "0:10"));
    assertEquals(DrillTime.UNKNOWN, read(" ", ""));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "17:50 | 17:30 | the drill ends at \"17:30\", not after its start at \"17:50\"",
        "17:30 | 17:30 | the drill ends at \"17:30\", not after its start at \"17:30\"",
        "17:30 | '' | the drill's end is missing: say both",
        "'' | 17:30 | the drill's start is missing: say both",
        "25:10 | 17:30 | \"25:10\" is not a time: write it as 17:30",
        "half past five | 17:30 | \"half past five\" is not a time",
        "2026-02-30 10:00 | 17:30 | \"2026-02-30 10:00\" is not a time",
      })
  void whatCantBeIsRefusedInOneLine(String start, String end, String why) {
    String said = assertThrows(UserError.class, () -> read(start, end)).getMessage();
    assertEquals(why, said.substring(0, Math.min(why.length(), said.length())));
    assertEquals(1, said.lines().count());
  }

  private static DrillTime read(String start, String end) throws UserError {
    return DrillTime.read(start, end, DAY, ZONE);
  }

  private static Instant at(String text) {
    return Instant.parse(text);
  }
}
