package palmturn.app.desk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import palmturn.trial.Session;
import palmturn.trial.UserError;
import palmturn.work.score.LimitsInForce;
import palmturn.work.session.Sessions;

class LoadedSessionTest {
  @TempDir private Path where;

  @Test
  void aSessionIsHeldAgainstTheUsersLimitsAndASlipInThemIsNamed() throws Exception {
    Path settings = Files.createDirectory(where.resolve("settings"));
    Path session = where.resolve("session");
    Sessions.create(session, "H-07", LocalDate.of(2026, 11, 14), Session.Facts.NONE).close();
    Path users = settings.resolve(LimitsInForce.FILE);
    LimitsInForce.write(users, false);
    String text = Files.readString(users);
    assertTrue(text.contains("\"elbowCm\": {\"value\": 3,"), text);
    Files.writeString(
        users, text.replace("\"elbowCm\": {\"value\": 3,", "\"elbowCm\": {\"value\": 4.5,"));
    LoadedSession opened = LoadedSession.load(settings, session);
    opened.folder().close();
    assertEquals(4.5, opened.limits().elbowCm().value());

    Files.writeString(users, text.replace("elbowCm", "elbow"));
    String refused =
        assertThrows(UserError.class, () -> LoadedSession.load(settings, session)).getMessage();
    assertTrue(refused.startsWith(users + ": $.elbowCm: missing"), refused);
  }
}
