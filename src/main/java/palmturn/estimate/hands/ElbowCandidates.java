package palmturn.estimate.hands;

/**
 * The positions of an elbow by a body's landmarks at a moment, one for each input square.
 *
 * @param timeS real seconds
 * @param x on the stage, pixels
 * @param y on the stage, pixels
 * @param visibility 0 to 1, that the elbow is in the picture and not occluded; 0 where the square
 *     shows no body
 */
@SuppressWarnings("ArrayRecordComponent") // Made once and only read.
public record ElbowCandidates(double timeS, double[] x, double[] y, double[] visibility) {}
