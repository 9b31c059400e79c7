package palmturn.work.report;

import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import java.util.stream.DoubleStream;
import org.jspecify.annotations.Nullable;
import palmturn.clip.ClipFile;
import palmturn.clip.FrameTable;
import palmturn.measure.ReadingChoice;
import palmturn.report.MarksCsv;
import palmturn.report.MarksFormatException;
import palmturn.settle.SettledTrial;
import palmturn.store.SessionFolder;
import palmturn.trial.Extra;
import palmturn.trial.Reading;
import palmturn.trial.Slap;
import palmturn.trial.StartedFrom;
import palmturn.trial.Trial;
import palmturn.trial.TrialId;
import palmturn.trial.UserError;
import palmturn.work.NewFile;
import palmturn.work.session.Sessions;

/** Marks exported and imported as CSV. */
public final class MarksFiles {
  private static final long MAX_BYTES = 4L << 20;

  private MarksFiles() {}

  /** Returns a reading's marks as CSV; with no reader named, the only one's. */
  public static String export(SessionFolder folder, TrialId id, @Nullable String reader)
      throws UserError {
    Trial trial = Sessions.trial(folder, id.name());
    return MarksCsv.write(chosen(trial, reader));
  }

  /** Writes text to a file that is not there yet or is a file already. */
  public static void write(Path file, String text) throws UserError {
    NewFile.write(file, true, text.getBytes(StandardCharsets.UTF_8));
  }

  /**
   * Reads a CSV file as a reader's marks and keeps them in the session.
   *
   * @param replace whether marks that this reader already has may go
   */
  public static Reading importMarks(
      SessionFolder folder, TrialId id, Path file, String reader, boolean replace)
      throws UserError {
    Trial trial = Sessions.trial(folder, id.name());
    if (reader.equals(ReadingChoice.ESTIMATE_NAME)) {
      throw new UserError("no reader may be called estimate: that is what the program found");
    }
    if (reader.equals(SettledTrial.READER)) {
      throw new UserError("no reader may be called settled: that is what two readings come to");
    }
    if (!replace && trial.reading(reader).filter(r -> !r.slaps().isEmpty()).isPresent()) {
      throw new UserError(
          "%s already has marks by %s: say --replace to put others in their place"
              .formatted(id.name(), reader));
    }
    Reading reading = reading(text(file), file, reader, trial.clip().medianFrameS());
    refuseBeyondClip(reading, folder.clipPath(trial), file);
    folder.keep(id, reading, "Import marks from " + file.getFileName());
    return reading;
  }

  /** Refuses marks at times at which the clip has no picture; without the clip none is known. */
  private static void refuseBeyondClip(Reading reading, Path clip, Path file) throws UserError {
    if (!Files.exists(clip)) {
      return;
    }
    FrameTable frames = ClipFile.open(clip).frames();
    double firstS = frames.timeS(0);
    double lastS = frames.timeS(frames.size() - 1);
    double slackS = 2 * frames.medianS();
    DoubleStream times =
        DoubleStream.concat(
            reading.slaps().stream().mapToDouble(Slap::timeS),
            reading.spans().stream().flatMapToDouble(s -> DoubleStream.of(s.startS(), s.endS())));
    OptionalDouble beyond =
        times.filter(t -> t < firstS - slackS || t > lastS + slackS).findFirst();
    if (beyond.isPresent()) {
      throw new UserError(
          String.format(
              Locale.ROOT,
              "%s: a mark at %.3f s lies outside the clip, which shows %.3f to %.3f s; are these the"
                  + " marks of this trial?",
              file.getFileName(),
              beyond.getAsDouble(),
              firstS,
              lastS));
    }
  }

  /**
   * Returns marks as a finished reading that was started from nothing.
   *
   * @param medianFrameS resolution of marks by picture that name none, seconds
   */
  public static Reading reading(String csv, Path file, String reader, double medianFrameS)
      throws UserError {
    try {
      MarksCsv.Marks marks = MarksCsv.parse(csv, medianFrameS);
      return new Reading(
          reader, true, StartedFrom.NOTHING, marks.slaps(), marks.spans(), Extra.NONE);
    } catch (MarksFormatException e) {
      throw new UserError(file.getFileName() + ": " + e.getMessage(), e);
    }
  }

  public static String text(Path file) throws UserError {
    try {
      if (Files.size(file) > MAX_BYTES) {
        throw new UserError(file + " is too large to be what it should be");
      }
      return Files.readString(file);
    } catch (NoSuchFileException e) {
      throw new UserError(file + " is not there", e);
    } catch (CharacterCodingException e) {
      throw new UserError(file + " is not UTF-8 text", e);
    } catch (IOException e) {
      throw new UserError(file + " can't be read", e);
    }
  }

  private static Reading chosen(Trial trial, @Nullable String reader) throws UserError {
    List<Reading> all = trial.readings();
    String names = all.stream().map(Reading::reader).collect(Collectors.joining(", "));
    if (reader != null) {
      return trial
          .reading(reader)
          .orElseThrow(
              () ->
                  new UserError(
                      "%s has no reading by %s%s"
                          .formatted(
                              trial.id().name(),
                              reader,
                              names.isEmpty() ? "" : "; there are " + names)));
    }
    if (all.size() != 1) {
      throw new UserError(
          all.isEmpty()
              ? trial.id().name() + " has no reading yet"
              : "%s has readings by %s: say --reader".formatted(trial.id().name(), names));
    }
    return all.get(0);
  }
}
