package palmturn.store;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import palmturn.json.DamagedTrial;
import palmturn.json.JournalLine;
import palmturn.trial.Reading;
import palmturn.trial.Trial;
import palmturn.trial.TrialId;

/**
 * The readable rest of a trial whose file or journal is damaged.
 *
 * @param id the trial, by the file's name
 * @param problem the damage, in one line
 * @param trial the trial with its readings; null where its clip or its stretch can't be read
 * @param readings the readings that are whole, those of the journal in place of the file's
 */
public record Recoverable(
    TrialId id, String problem, @Nullable Trial trial, List<Reading> readings) {

  static Recoverable of(Path folder, TrialId id, String problem, Disk disk) {
    Map<String, Reading> readings = new LinkedHashMap<>();
    Trial trial = null;
    try {
      byte[] bytes = TextFile.bytes(folder.resolve(id.name() + ".json"));
      DamagedTrial part = DamagedTrial.read(new String(bytes, StandardCharsets.UTF_8));
      boolean own =
          part.trial() != null
              && part.trial().id().equals(id)
              && SessionPaths.isInside(part.trial().clip().path());
      trial = own ? part.trial() : null;
      part.readings().forEach(each -> readings.put(each.reader(), each));
    } catch (StoreException e) {
      // Nothing can be read of the file; the journal may have more.
    }
    try {
      for (JournalLine line :
          Journal.open(folder.resolve(id.name() + ".journal"), disk).lastOfReaders()) {
        readings.put(line.reading().reader(), line.reading());
      }
    } catch (StoreException e) {
      // Nothing can be read of the journal; the file may have more.
    }
    for (Reading each : readings.values()) {
      trial = trial == null ? null : trial.withReading(each);
    }
    return new Recoverable(id, problem, trial, List.copyOf(readings.values()));
  }
}
