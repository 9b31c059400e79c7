package palmturn.trial;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The complete set of one reader's marks on one trial.
 *
 * @param reader the reader's initials or name
 * @param finished whether the reader has said that it is complete
 * @param startedFrom what the first marks came from
 * @param estimateSeen whether the estimate was in sight at any moment while it was marked, or
 *     another reader's marks before that
 * @param reopenedAt when it was opened again after it had been finished, in order
 * @param received how it came with a pack; null for a reading made here
 * @param slaps marks at a moment, in order of time
 * @param spans faults over a stretch, in order of their start
 * @param extra unknown keys
 */
public record Reading(
    String reader,
    boolean finished,
    StartedFrom startedFrom,
    boolean estimateSeen,
    List<Instant> reopenedAt,
    @Nullable Received received,
    List<Slap> slaps,
    List<Span> spans,
    Extra extra) {

  public Reading {
    reopenedAt = List.copyOf(reopenedAt);
    slaps = slaps.stream().sorted(Comparator.comparingDouble(Slap::timeS)).toList();
    spans = spans.stream().sorted(Comparator.comparingDouble(Span::startS)).toList();
  }

  /** A reading made with the estimate out of sight and never opened again. */
  public Reading(
      String reader,
      boolean finished,
      StartedFrom startedFrom,
      List<Slap> slaps,
      List<Span> spans,
      Extra extra) {
    this(reader, finished, startedFrom, false, List.of(), null, slaps, spans, extra);
  }

  /** Returns an open reading without marks. */
  public static Reading begin(String reader, StartedFrom startedFrom) {
    return new Reading(reader, false, startedFrom, List.of(), List.of(), Extra.NONE);
  }

  /** Returns whether the marks owe nothing to the estimate or to another reader. */
  public boolean independent() {
    return startedFrom.source() == StartedFrom.Origin.NOTHING && !estimateSeen;
  }

  /** Returns this reading with other marks. */
  public Reading withSlaps(List<Slap> newSlaps) {
    return with(reader, finished, estimateSeen, reopenedAt, received, newSlaps, spans);
  }

  /** Returns this reading with other spans. */
  public Reading withSpans(List<Span> newSpans) {
    return with(reader, finished, estimateSeen, reopenedAt, received, slaps, newSpans);
  }

  /** Returns this reading finished, or open again. */
  public Reading withFinished(boolean nowFinished) {
    return with(reader, nowFinished, estimateSeen, reopenedAt, received, slaps, spans);
  }

  /** Returns this reading as one for which the estimate was, or was not, in sight. */
  public Reading withEstimateSeen(boolean nowSeen) {
    return with(reader, finished, nowSeen, reopenedAt, received, slaps, spans);
  }

  /** Returns this reading with the moments at which it was opened again. */
  public Reading withReopenedAt(List<Instant> moments) {
    return with(reader, finished, estimateSeen, moments, received, slaps, spans);
  }

  /** Returns whether it was made here, or came with a pack and has been worked on here. */
  public boolean own() {
    return received == null || received.changed();
  }

  /** Returns whether it came with a pack and is kept beside another by the same reader. */
  public boolean keptBeside() {
    return !own() && received != null && !received.reader().equals(reader);
  }

  /** Returns this reading as one that came with a pack, or as one made here. */
  public Reading withReceived(@Nullable Received arrival) {
    return with(reader, finished, estimateSeen, reopenedAt, arrival, slaps, spans);
  }

  /** Returns this reading as worked on here. */
  public Reading changedHere() {
    return received == null || received.changed()
        ? this
        : withReceived(new Received(received.reader(), received.pack(), received.sha256(), true));
  }

  /** Returns this reading under another name. */
  public Reading by(String newReader) {
    return with(newReader, finished, estimateSeen, reopenedAt, received, slaps, spans);
  }

  /** Returns this reading with one mark more. */
  public Reading plus(Slap slap) {
    List<Slap> more = new ArrayList<>(slaps);
    more.add(slap);
    return withSlaps(more);
  }

  private Reading with(
      String newReader,
      boolean nowFinished,
      boolean nowSeen,
      List<Instant> moments,
      @Nullable Received newReceived,
      List<Slap> newSlaps,
      List<Span> newSpans) {
    return new Reading(
        newReader,
        nowFinished,
        startedFrom,
        nowSeen,
        moments,
        newReceived,
        newSlaps,
        newSpans,
        extra);
  }
}
