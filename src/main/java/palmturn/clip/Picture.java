package palmturn.clip;

/**
 * One frame, upright.
 *
 * @param index its place in the frame table
 * @param timeS its presentation time, seconds
 * @param width pixels
 * @param height pixels
 * @param argb opaque pixels, row by row; not to be changed
 */
@SuppressWarnings("ArrayRecordComponent") // Copying every frame would cost more than it protects.
public record Picture(int index, double timeS, int width, int height, int[] argb) {}
