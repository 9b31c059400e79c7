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
 * @param receivedSha256 what the marks were when they came with a pack, as a SHA-256; null for a
 *     reading made here
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
    @Nullable String receivedSha256,
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
    return with(reader, finished, estimateSeen, reopenedAt, receivedSha256, newSlaps, spans);
  }

  /** Returns this reading with other spans. */
  public Reading withSpans(List<Span> newSpans) {
    return with(reader, finished, estimateSeen, reopenedAt, receivedSha256, slaps, newSpans);
  }

  /** Returns this reading finished, or open again. */
  public Reading withFinished(boolean nowFinished) {
    return with(reader, nowFinished, estimateSeen, reopenedAt, receivedSha256, slaps, spans);
  }

  /** Returns this reading as one for which the estimate was, or was not, in sight. */
  public Reading withEstimateSeen(boolean nowSeen) {
    return with(reader, finished, nowSeen, reopenedAt, receivedSha256, slaps, spans);
  }

  /** Returns this reading with the moments at which it was opened again. */
  public Reading withReopenedAt(List<Instant> moments) {
    return with(reader, finished, estimateSeen, moments, receivedSha256, slaps, spans);
  }

  /** Returns this reading as one that came with a pack, with what its marks were then. */
  public Reading received(@Nullable String sha256) {
    return with(reader, finished, estimateSeen, reopenedAt, sha256, slaps, spans);
  }

  /** Returns this reading under another name. */
  public Reading by(String newReader) {
    return with(newReader, finished, estimateSeen, reopenedAt, receivedSha256, slaps, spans);
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
      @Nullable String newReceivedSha256,
      List<Slap> newSlaps,
      List<Span> newSpans) {
    return new Reading(
        newReader,
        nowFinished,
        startedFrom,
        nowSeen,
        moments,
        newReceivedSha256,
        newSlaps,
        newSpans,
        extra);
  }
}
