package palmturn.lab.fuzz;

import java.util.Arrays;
import java.util.Random;

/** Damages a file's bytes; the same seed does the same. */
public final class Mutation {
  /**
   * Length of a file's head; head and tail describe the rest, so they are hit as often as all of
   * it.
   */
  private static final int HEAD = 4096;

  /** Values at which lengths, counts and signs overflow. */
  private static final int[] EDGE_VALUES = {
    0, 1, -1, 0x7fffffff, 0x80000000, 0x01000000, 0xffff, 255
  };

  private Mutation() {}

  /** Returns a damaged copy. */
  public static byte[] of(byte[] good, Random random) {
    byte[] bytes = good.clone();
    int times = 1 + random.nextInt(3);
    for (int i = 0; i < times && bytes.length > 16; i++) {
      bytes = damageOnce(bytes, random);
    }
    return bytes;
  }

  private static byte[] damageOnce(byte[] bytes, Random random) {
    int from = 0;
    int to = bytes.length;
    switch (random.nextInt(3)) {
      case 0 -> to = Math.min(to, HEAD);
      case 1 -> from = Math.max(0, to - 5 * HEAD);
      default -> {}
    }
    int at = from + random.nextInt(to - from);
    int run = Math.min(to - at, 1 + random.nextInt(1 << (1 + random.nextInt(12))));
    switch (random.nextInt(8)) {
      case 0 -> {
        return Arrays.copyOf(bytes, Math.max(1, at));
      }
      case 1 -> {
        return without(bytes, at, run);
      }
      case 2 -> Arrays.fill(bytes, at, at + run, (byte) 0);
      case 3 -> {
        byte[] noise = new byte[run];
        random.nextBytes(noise);
        System.arraycopy(noise, 0, bytes, at, run);
      }
      case 4 -> System.arraycopy(bytes, random.nextInt(bytes.length - run + 1), bytes, at, run);
      case 5 -> putEdgeValues(bytes, from, to, random);
      default -> {
        int flips = 1 << random.nextInt(9);
        for (int i = 0; i < flips; i++) {
          bytes[from + random.nextInt(to - from)] ^= (byte) (1 << random.nextInt(8));
        }
      }
    }
    return bytes;
  }

  private static byte[] without(byte[] bytes, int at, int run) {
    byte[] rest = Arrays.copyOf(bytes, bytes.length - run);
    System.arraycopy(bytes, at + run, rest, at, rest.length - at);
    return rest;
  }

  /** Puts numbers that programs count wrongly with where a file may hold lengths and counts. */
  private static void putEdgeValues(byte[] bytes, int from, int to, Random random) {
    int places = 1 + random.nextInt(4);
    for (int i = 0; i < places && to - from >= 4; i++) {
      int at = from + random.nextInt(to - from - 3);
      int value = EDGE_VALUES[random.nextInt(EDGE_VALUES.length)];
      for (int b = 0; b < 4; b++) {
        bytes[at + b] = (byte) (value >> 8 * (3 - b));
      }
    }
  }
}
