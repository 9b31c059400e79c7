package palmturn.measure;

/**
 * The count of one fault in the window.
 *
 * @param palm on slaps with the palm side
 * @param back on slaps with the back
 * @param unknown where the side was not told
 * @param per10 for every ten attempts
 */
public record FaultCount(int palm, int back, int unknown, double per10) {
  /** Returns the count over all sides. */
  public int all() {
    return palm + back + unknown;
  }
}
