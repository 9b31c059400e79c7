package palmturn.trial;

import java.util.List;

/**
 * The conversion of media seconds to real seconds. Files and CSV hold media seconds; every figure,
 * band and limit is in real seconds.
 *
 * @param pieces stretches of the clip in order, each with its own factor; before the first one its
 *     factor holds too
 * @param refusedWhy empty, or why speed and rhythm are unknown for this clip
 */
public record TimeScale(List<Piece> pieces, String refusedWhy) {
  /** Real time, as nearly all clips have it. */
  public static final TimeScale REAL = uniform(1);

  /**
   * A stretch with one factor, to the start of the next.
   *
   * @param fromS first moment, media seconds
   * @param factor real seconds in one media second, above 0
   */
  public record Piece(double fromS, double factor) {
    public Piece {
      if (!(factor > 0) || !Double.isFinite(factor)) {
        throw new IllegalArgumentException("a time factor must be above 0, not " + factor);
      }
    }
  }

  public TimeScale {
    pieces = List.copyOf(pieces);
    if (pieces.isEmpty()) {
      throw new IllegalArgumentException("a time scale needs at least one piece");
    }
  }

  /** Returns one factor for the whole clip. */
  public static TimeScale uniform(double factor) {
    return new TimeScale(List.of(new Piece(0, factor)), "");
  }

  /** Returns a scale that refuses speed and rhythm. */
  public static TimeScale refused(String why) {
    return new TimeScale(List.of(new Piece(0, 1)), why);
  }

  /**
   * Returns the factor for a clip whose frames are {@code medianFrameS} apart and that was captured
   * at {@code captureFps}: (1/medianFrameS)/captureFps, and 1 where the two agree within 5 %.
   */
  public static TimeScale ofCapture(double medianFrameS, double captureFps) {
    double factor = 1 / medianFrameS / captureFps;
    return Math.abs(factor - 1) <= 0.05 ? REAL : uniform(factor);
  }

  /** Returns whether speed and rhythm can be told. */
  public boolean known() {
    return refusedWhy.isEmpty();
  }

  /** Returns the factor at a moment. */
  public double factorAt(double mediaS) {
    return pieces.get(pieceAt(mediaS)).factor();
  }

  /** Returns the real seconds between two media moments, negative if they are in reverse. */
  public double realBetween(double fromMediaS, double toMediaS) {
    if (toMediaS < fromMediaS) {
      return -realBetween(toMediaS, fromMediaS);
    }
    double real = 0;
    double at = fromMediaS;
    for (int i = pieceAt(fromMediaS); at < toMediaS; i++) {
      double end = Math.min(toMediaS, endOf(i));
      real += (end - at) * pieces.get(i).factor();
      at = end;
    }
    return real;
  }

  /** Returns the media moment that lies {@code realS} real seconds after another, or before it. */
  public double mediaAfter(double fromMediaS, double realS) {
    double at = fromMediaS;
    double left = realS;
    for (int i = pieceAt(fromMediaS); ; i += left < 0 ? -1 : 1) {
      double factor = pieces.get(i).factor();
      double edge = left < 0 ? startOf(i) : endOf(i);
      double inPiece = (edge - at) * factor;
      if (Math.abs(left) <= Math.abs(inPiece)) {
        return at + left / factor;
      }
      left -= inPiece;
      at = edge;
    }
  }

  private int pieceAt(double mediaS) {
    int at = 0;
    while (at + 1 < pieces.size() && pieces.get(at + 1).fromS() <= mediaS) {
      at++;
    }
    return at;
  }

  private double startOf(int piece) {
    return piece > 0 ? pieces.get(piece).fromS() : Double.NEGATIVE_INFINITY;
  }

  private double endOf(int piece) {
    return piece + 1 < pieces.size() ? pieces.get(piece + 1).fromS() : Double.POSITIVE_INFINITY;
  }
}
