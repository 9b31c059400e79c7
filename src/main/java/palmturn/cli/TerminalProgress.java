package palmturn.cli;

import java.util.function.BooleanSupplier;
import me.tongfei.progressbar.ConsoleProgressBarConsumer;
import me.tongfei.progressbar.ProgressBar;
import me.tongfei.progressbar.ProgressBarBuilder;
import me.tongfei.progressbar.ProgressBarStyle;
import org.jspecify.annotations.Nullable;
import palmturn.clip.Progress;
import palmturn.work.WorkFile;
import picocli.CommandLine.Model.CommandSpec;

/** A progress bar on a terminal, and nothing elsewhere. */
public final class TerminalProgress implements Progress, AutoCloseable {
  private static final int STEPS = 1000;
  private static final int COLUMNS = 79;
  private static final int MESSAGE = 28;
  private final @Nullable ProgressBar bar;
  private final BooleanSupplier interrupted;

  private TerminalProgress(@Nullable ProgressBar bar, BooleanSupplier interrupted) {
    this.bar = bar;
    this.interrupted = interrupted;
  }

  /** Returns a bar for a command, which is shown only where standard error is a terminal. */
  public static TerminalProgress on(CommandSpec spec) {
    return on(spec, WorkFile::isEnding);
  }

  /** Returns a bar that also stops the work where something outside says so. */
  static TerminalProgress on(CommandSpec spec, BooleanSupplier interrupted) {
    if (System.console() == null) {
      return new TerminalProgress(null, interrupted);
    }
    return new TerminalProgress(
        new ProgressBarBuilder()
            .setTaskName(spec.name())
            .setInitialMax(STEPS)
            .setStyle(ProgressBarStyle.ASCII)
            // Asking the terminal for its width would take Ctrl-C away from the program.
            .setConsumer(new ConsoleProgressBarConsumer(System.err, COLUMNS))
            .build(),
        interrupted);
  }

  @Override
  public void at(double share, String what) {
    if (bar != null) {
      bar.stepTo(Math.round(share * STEPS));
      String words = TerminalWriter.harmless(what);
      int over = words.length() - MESSAGE;
      bar.setExtraMessage(over <= 0 ? words : "…" + words.substring(over + 1));
    }
  }

  /** Takes the bar off its line, so that another can be printed there; it comes back by itself. */
  void clearLine() {
    if (bar != null) {
      System.err.print("\r" + " ".repeat(COLUMNS) + "\r");
      System.err.flush();
    }
  }

  @Override
  public boolean stopped() {
    return interrupted.getAsBoolean() || Thread.currentThread().isInterrupted();
  }

  @Override
  public void close() {
    if (bar != null) {
      bar.close();
    }
  }
}
