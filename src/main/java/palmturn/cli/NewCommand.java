package palmturn.cli;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import palmturn.store.SessionFolder;
import palmturn.trial.Hand;
import palmturn.trial.Session;
import palmturn.work.session.Sessions;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

@Command(name = "new", description = "Makes a session folder for one athlete and one day.")
final class NewCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Parameters(paramLabel = "SESSION", description = "The folder to make.")
  private Path session;

  @Option(names = "--athlete", required = true, description = "The athlete's code, such as H-07.")
  private String athlete;

  @Option(names = "--date", description = "The day of filming, as 2026-11-14; today if left out.")
  private @Nullable LocalDate date;

  @Option(names = "--racket-hand", description = "The hand that holds the racket.")
  private @Nullable Hand racketHand;

  @Mixin private LengthOptions lengths;

  @Option(names = "--pain", paramLabel = "TEXT", description = "Pain or injury today.")
  private @Nullable String pain;

  @Option(
      names = "--guardian-consent",
      description = "A guardian has agreed to the filming, where that is needed.")
  private @Nullable Boolean guardianConsent;

  @Option(names = "--camera", paramLabel = "TEXT", description = "What it was filmed with.")
  private @Nullable String camera;

  @Option(names = "--club", paramLabel = "TEXT", description = "Where the athlete trains.")
  private @Nullable String club;

  @Override
  public Integer call() throws Exception {
    Session.Facts facts =
        new Session.Facts(
            racketHand,
            lengths.forearmCm(),
            lengths.handCm(),
            lengths.statureCm(),
            pain,
            guardianConsent,
            camera,
            club);
    LocalDate day = date == null ? LocalDate.now(Clocks.SYSTEM) : date;
    try (SessionFolder made = Sessions.create(session, athlete, day, facts)) {
      Output.print(spec, "made %s for %s, %s", session, athlete, day);
    }
    return PalmturnCommand.DONE;
  }
}
