package palmturn.work.session;

import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.function.UnaryOperator;
import org.jspecify.annotations.Nullable;
import palmturn.store.SessionFolder;
import palmturn.trial.Block;
import palmturn.trial.Drill;
import palmturn.trial.DrillHand;
import palmturn.trial.Extra;
import palmturn.trial.Message;
import palmturn.trial.Session;
import palmturn.trial.TrialId;
import palmturn.trial.UserError;

/** Notes on a session: the athlete's facts, the drill before a block, and messages. */
public final class Notes {
  private Notes() {}

  /** Says other things of the athlete. */
  public static void facts(SessionFolder folder, Session.Facts facts) throws UserError {
    change(folder, session -> session.withFacts(facts));
  }

  /** Says which drill was done before a block, and when, making the block where it is new. */
  public static void drill(
      SessionFolder folder, String block, String code, DrillHand hand, String dose, DrillTime time)
      throws UserError {
    if (!Block.isName(block) || block.equals(Block.BASELINE)) {
      throw new UserError(
          "\"%s\" is not a block after a drill: after-1, after-2 …".formatted(block));
    }
    if (code.isBlank()) {
      throw new UserError("the drill needs a code, such as paced-flips or rest");
    }
    Drill drill = new Drill(code.strip(), hand, dose, time.start(), time.end(), Extra.NONE);
    change(folder, session -> AddClip.withBlock(session, new Block(block, drill, Extra.NONE)));
  }

  /** Adds a message, about the session or about a moment of a trial. */
  public static void message(
      SessionFolder folder,
      String from,
      String text,
      @Nullable TrialId trial,
      @Nullable Double timeS,
      Clock clock)
      throws UserError {
    if (text.isBlank()) {
      throw new UserError("the note is empty: say something");
    }
    if (trial != null && folder.trials().stream().noneMatch(t -> t.id().equals(trial))) {
      throw new UserError("%s is not in %s".formatted(trial.name(), folder.folder().getFileName()));
    }
    Message said = new Message(from, clock.instant(), trial, timeS, text, Extra.NONE);
    change(folder, session -> session.withMessages(with(session.messages(), said)));
  }

  /** Puts other messages in the place of those of a session. */
  public static void messages(SessionFolder folder, List<Message> all) throws UserError {
    change(folder, session -> session.withMessages(all));
  }

  /** Returns messages with one more that is written now, oldest first. */
  public static List<Message> with(List<Message> messages, Message more) {
    List<Message> all = new ArrayList<>(messages);
    all.add(more);
    all.sort(Message.order(more.at()));
    return List.copyOf(all);
  }

  private static void change(SessionFolder folder, UnaryOperator<Session> how) throws UserError {
    folder.change(how);
  }
}
