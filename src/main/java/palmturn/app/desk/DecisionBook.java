package palmturn.app.desk;

import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.function.Consumer;
import palmturn.app.board.Board;
import palmturn.app.differences.ReviewContext;
import palmturn.store.SessionFolder;
import palmturn.trial.Settlement;
import palmturn.trial.Trial;

/** The open session as the place where decisions between two readings go. */
record DecisionBook(Clock clock, OpenSession session, Board board, Prompts prompts)
    implements ReviewContext {
  @Override
  public boolean readOnly() {
    return session.readOnly();
  }

  @Override
  public void reportReadOnly() {
    session.refusesEdits();
  }

  @Override
  public void askReviewer(Consumer<String> then) {
    prompts
        .questions()
        .ask(
            new Question.Line(
                "line",
                "Who decides?",
                List.of("Your initials stand with each decision."),
                "",
                8,
                "Decide",
                then));
  }

  @Override
  public Instant now() {
    return clock.instant().truncatedTo(ChronoUnit.SECONDS);
  }

  @Override
  public void save(Trial trial, Settlement settlement) {
    SessionFolder to = session.folder();
    Trial now = session.trials().get(trial.id());
    if (to != null && now != null) {
      Trial settled = now.withSettlement(settlement);
      session.trials().put(settled);
      board.update(session.trials().cell(settled, session.readers().shown(settled)));
      session.saving().keep(to, trial.id(), settlement);
    }
  }

  @Override
  public void report(String words) {
    prompts.notices().warn(words);
  }

  @Override
  public void reportError(Exception problem) {
    prompts.notices().fail(problem);
  }
}
