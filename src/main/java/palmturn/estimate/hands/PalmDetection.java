package palmturn.estimate.hands;

/**
 * A palm as the detector sees it, in pixels of the picture.
 *
 * @param score 0 to 1
 * @param centreX of its box
 * @param centreY of its box
 * @param width of its box
 * @param height of its box
 * @param x of seven points: wrist, four knuckles from index to little finger, two of the thumb
 * @param y of the same points, downwards
 */
@SuppressWarnings("ArrayRecordComponent") // Made once and only read.
public record PalmDetection(
    double score,
    double centreX,
    double centreY,
    double width,
    double height,
    double[] x,
    double[] y) {}
