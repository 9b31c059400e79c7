package palmturn.estimate.sound;

/**
 * The beginning of a short sound.
 *
 * @param timeS on the sound's clock, read off the waveform, seconds
 * @param strength height of the flux above its median, 1 = a strong one of this sound
 */
public record Onset(double timeS, double strength) {}
