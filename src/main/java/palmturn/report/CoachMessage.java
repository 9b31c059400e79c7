package palmturn.report;

import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;
import palmturn.trial.Message;
import palmturn.trial.Session;
import palmturn.wording.Names;

/** The coach's word to the athlete: the last message that is about no moment of a clip. */
final class CoachMessage {
  private static final String COACH = "coach";

  private CoachMessage() {}

  /** Returns it as of a moment, null where the coach has written none. */
  static Page.@Nullable CoachPart of(Session session, Instant now) {
    return session.messages().stream()
        .filter(message -> message.from().strip().equalsIgnoreCase(COACH))
        .filter(message -> message.timeS() == null && !message.text().isBlank())
        .max(Message.order(now))
        .map(CoachMessage::part)
        .orElse(null);
  }

  private static Page.CoachPart part(Message message) {
    List<String> paragraphs =
        message.text().lines().map(String::strip).filter(line -> !line.isEmpty()).toList();
    String about = message.trial() == null ? "" : " about the " + Names.trial(message.trial());
    return new Page.CoachPart(paragraphs, Names.date(message.at()) + about);
  }
}
