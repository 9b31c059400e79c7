package palmturn.estimate.hands;

/**
 * Where a body's landmarks put an elbow at a moment, by each square that was looked at for itself.
 *
 * @param timeS real seconds
 * @param x on the stage, pixels
 * @param y on the stage, pixels
 * @param visibility 0 to 1, that the elbow lies in the picture and is not covered; 0 where the
 *     square shows no body
 */
@SuppressWarnings("ArrayRecordComponent") // Made once and only read.
public record ElbowCandidates(double timeS, double[] x, double[] y, double[] visibility) {}
