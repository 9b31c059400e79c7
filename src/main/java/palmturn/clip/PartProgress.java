package palmturn.clip;

/**
 * The progress of one part of a task, mapped to the whole.
 *
 * @param whole receives it
 * @param start share of the whole that was done before
 * @param share of the whole that this part is
 */
public record PartProgress(Progress whole, double start, double share) implements Progress {
  @Override
  public void at(double done, String what) {
    whole.at(start + share * done, what);
  }

  @Override
  public boolean stopped() {
    return whole.stopped();
  }
}
