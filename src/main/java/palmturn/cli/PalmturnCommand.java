package palmturn.cli;

import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import palmturn.trial.UserError;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.ScopeType;

/** The program's root command; alone it opens the app. */
@Command(
    name = "palmturn",
    description = "Scores filmed palm-and-back slap tests, frame by frame.",
    mixinStandardHelpOptions = true,
    versionProvider = PalmturnCommand.Version.class,
    scope = ScopeType.INHERIT,
    sortOptions = false,
    footer = {
      "",
      "Exit status: 0 done, 1 something wrong with the data, 2 wrong use.",
      "It measures a skill; it does not diagnose. Clips stay on this computer."
    },
    subcommands = {
      DemoCommand.class,
      OpenCommand.class,
      NewCommand.class,
      AddCommand.class,
      DrillCommand.class,
      NoteCommand.class,
      InspectCommand.class,
      EstimateCommand.class,
      MarksCommand.class,
      ScoreCommand.class,
      LadderCommand.class,
      SettleCommand.class,
      AgreeCommand.class,
      ReelCommand.class,
      PackCommand.class,
      UnpackCommand.class,
      LimitsCommand.class,
      ReportCommand.class,
      ProgressCommand.class,
      DrillsCommand.class,
      ClicksCommand.class,
      VerifyCommand.class,
      ModelsCommand.class
    })
public final class PalmturnCommand extends RootCommand implements Callable<Integer> {
  public static final int DONE = 0;
  public static final int WRONG_DATA = 1;
  public static final int WRONG_USE = 2;

  private final AppStarter app;

  private PalmturnCommand(AppStarter app) {
    this.app = app;
  }

  /** Opens the app, on a session or empty. */
  @FunctionalInterface
  public interface AppStarter {
    /**
     * Returns after the app has been closed.
     *
     * @throws UserError if there is no display, or a library that the app needs is missing
     */
    void start(@Nullable Path session) throws UserError;
  }

  /**
   * Runs one command line.
   *
   * @return the exit status
   */
  public static int run(String[] args, Writer out, Writer err, AppStarter app) {
    return new PalmturnCommand(app).run(new Factory(app), args, out, err);
  }

  @Override
  public Integer call() throws UserError {
    app.start(null);
    return DONE;
  }

  /** Gives the commands that open the app what they need. */
  private record Factory(AppStarter app) implements CommandLine.IFactory {
    @Override
    public <K> K create(Class<K> type) throws Exception {
      Function<AppStarter, ?> maker =
          type == DemoCommand.class
              ? DemoCommand::new
              : type == OpenCommand.class ? OpenCommand::new : null;
      return maker == null
          ? CommandLine.defaultFactory().create(type)
          : type.cast(maker.apply(app));
    }
  }

  /** Reads the version that the build wrote. */
  public static final class Version implements CommandLine.IVersionProvider {
    @Override
    public String[] getVersion() {
      String version = PalmturnCommand.class.getPackage().getImplementationVersion();
      return new String[] {"palmturn " + (version == null ? "(unpacked)" : version)};
    }
  }

  /** Returns a writer of UTF-8, whatever the system's own encoding; it says what it can't write. */
  public static Writer utf8(FileDescriptor stream) {
    return new OutputStreamWriter(new FileOutputStream(stream), StandardCharsets.UTF_8);
  }
}
