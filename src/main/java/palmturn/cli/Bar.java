package palmturn.cli;

import me.tongfei.progressbar.ProgressBar;
import me.tongfei.progressbar.ProgressBarBuilder;
import me.tongfei.progressbar.ProgressBarStyle;
import org.jspecify.annotations.Nullable;
import palmturn.work.Progress;
import picocli.CommandLine.Model.CommandSpec;

/** A progress bar on a terminal, and nothing elsewhere. */
final class Bar implements Progress, AutoCloseable {
  private static final int STEPS = 1000;
  private final @Nullable ProgressBar bar;

  private Bar(@Nullable ProgressBar bar) {
    this.bar = bar;
  }

  /** Returns a bar for a command, which is shown only where standard error is a terminal. */
  static Bar on(CommandSpec spec) {
    if (System.console() == null) {
      return new Bar(null);
    }
    return new Bar(
        new ProgressBarBuilder()
            .setTaskName(spec.name())
            .setInitialMax(STEPS)
            .setStyle(ProgressBarStyle.ASCII)
            .build());
  }

  @Override
  public void at(double share, String what) {
    if (bar != null) {
      bar.stepTo(Math.round(share * STEPS));
      bar.setExtraMessage(what);
    }
  }

  @Override
  public boolean stopped() {
    return Thread.currentThread().isInterrupted();
  }

  @Override
  public void close() {
    if (bar != null) {
      bar.close();
    }
  }
}
