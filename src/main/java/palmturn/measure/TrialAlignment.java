package palmturn.measure;

/**
 * The alignment of the moments of two trials. They meet in a slap of each; away from it either real
 * time passes alike in both, or every slap of the one meets a slap of the other and the time
 * between is stretched to fit. Strictly rising, and undone by {@link #inverse}.
 *
 * @param one a trial
 * @param other the trial beside it
 * @param slap number of the slap of the first trial in which they meet, from 1; of no meaning where
 *     one of them has no slaps, which then meet where their clocks begin
 * @param shift how many slaps later in the other trial the one is that meets it; 0 for the same
 *     number, negative for earlier ones
 * @param samePace whether all slaps meet
 */
public record TrialAlignment(
    TrialClock one, TrialClock other, int slap, int shift, boolean samePace) {

  /** Returns the number of the first slap of the first trial that has one to meet. */
  public int first() {
    return Math.max(1, 1 - shift);
  }

  /** Returns the number of the last slap of the first trial that has one to meet, 0 for none. */
  public int last() {
    return Math.max(0, Math.min(one.slaps().size(), other.slaps().size() - shift));
  }

  /** Returns whether there is a slap in which the two meet. */
  public boolean onSlap() {
    return last() >= first();
  }

  /** Returns the moment of the other trial that is the same, both in media seconds. */
  public double toOther(double mediaS) {
    return other.mediaS(toOtherReal(one.realS(mediaS)));
  }

  /** Returns the same from the other trial's side. */
  public TrialAlignment inverse() {
    return new TrialAlignment(other, one, slap + shift, -shift, samePace);
  }

  /** Returns a moment on the other trial's clock for one on the first's, real seconds. */
  public double toOtherReal(double realS) {
    if (!onSlap()) {
      return realS;
    }
    if (!samePace) {
      return beside(slap, realS);
    }
    if (realS <= one.slapS(first())) {
      return beside(first(), realS);
    }
    int next = first() + 1;
    while (next <= last() && one.slapS(next) < realS) {
      next++;
    }
    return next > last() ? beside(last(), realS) : between(next - 1, realS);
  }

  private double beside(int number, double realS) {
    return realS - one.slapS(number) + other.slapS(number + shift);
  }

  private double between(int number, double realS) {
    double from = one.slapS(number);
    double share = (realS - from) / (one.slapS(number + 1) - from);
    double there = other.slapS(number + shift);
    return there + share * (other.slapS(number + 1 + shift) - there);
  }
}
