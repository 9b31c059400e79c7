package palmturn.trial;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * One athlete, one date.
 *
 * @param athlete the athlete's code, never a real name
 * @param date the day of filming
 * @param facts background that a coach needs
 * @param windowS the protocol's seconds counted from the first slap, real time
 * @param blocks baseline first
 * @param filmed the trials in the order they were filmed in
 * @param messages between athlete and coach, in order of time
 * @param extra unknown keys
 */
public record Session(
    String athlete,
    LocalDate date,
    Facts facts,
    double windowS,
    List<Block> blocks,
    List<TrialId> filmed,
    List<Message> messages,
    Extra extra) {

  /** The protocol's window where nothing else is said, seconds. */
  public static final double DEFAULT_WINDOW_S = 5.0;

  /**
   * Background that a coach needs; null where it was not stated.
   *
   * @param racketHand the hand that holds the racket
   * @param forearmCm measured length of the forearm
   * @param handCm measured length of the hand, wrist crease to tip of the middle finger
   * @param statureCm standing height
   * @param painToday pain or injury on the day, in the athlete's words
   * @param guardianConsent whether a guardian has agreed, where that is needed
   * @param camera what it was filmed with
   * @param club where the athlete trains
   */
  public record Facts(
      @Nullable Hand racketHand,
      @Nullable Double forearmCm,
      @Nullable Double handCm,
      @Nullable Double statureCm,
      @Nullable String painToday,
      @Nullable Boolean guardianConsent,
      @Nullable String camera,
      @Nullable String club) {
    /** Nothing stated. */
    public static final Facts NONE = new Facts(null, null, null, null, null, null, null, null);
  }

  public Session {
    blocks = List.copyOf(blocks);
    filmed = List.copyOf(filmed);
    messages = List.copyOf(messages);
  }

  /** Returns a session with a baseline block and nothing filmed. */
  public static Session begin(String athlete, LocalDate date) {
    return new Session(
        athlete,
        date,
        Facts.NONE,
        DEFAULT_WINDOW_S,
        List.of(new Block(Block.BASELINE, null, Extra.NONE)),
        List.of(),
        List.of(),
        Extra.NONE);
  }

  /** Returns the block of a name. */
  public Optional<Block> block(String name) {
    return blocks.stream().filter(b -> b.name().equals(name)).findFirst();
  }

  /** Returns this session with other blocks. */
  public Session withBlocks(List<Block> newBlocks) {
    return new Session(athlete, date, facts, windowS, newBlocks, filmed, messages, extra);
  }

  /** Returns this session with another filming order. */
  public Session withFilmed(List<TrialId> newFilmed) {
    return new Session(athlete, date, facts, windowS, blocks, newFilmed, messages, extra);
  }

  /** Returns this session with other messages. */
  public Session withMessages(List<Message> newMessages) {
    return new Session(athlete, date, facts, windowS, blocks, filmed, newMessages, extra);
  }

  /** Returns this session with other facts. */
  public Session withFacts(Facts newFacts) {
    return new Session(athlete, date, newFacts, windowS, blocks, filmed, messages, extra);
  }
}
