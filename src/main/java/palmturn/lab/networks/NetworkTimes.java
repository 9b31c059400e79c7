package palmturn.lab.networks;

import static org.bytedeco.opencv.global.opencv_core.setNumThreads;
import static org.bytedeco.opencv.global.opencv_imgcodecs.imread;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.bytedeco.opencv.opencv_core.Mat;
import palmturn.estimate.hands.NetworkUse;
import palmturn.estimate.hands.Networks;
import palmturn.estimate.hands.PalmDetection;
import palmturn.estimate.hands.Square;
import palmturn.trial.UserError;

/**
 * Times of the landmark networks, with one thread and with two, and the memory that the process
 * holds when they are opened and run over and over; for a quiet computer with Linux.
 */
public final class NetworkTimes {
  /** Enough for a steady median, and few enough for one sitting. */
  private static final int CALLS = 100;

  /** Calls before the timed ones, until code is compiled and caches are filled. */
  private static final int WARM_UP = 10;

  private NetworkTimes() {}

  /**
   * Prints times and memory.
   *
   * @param photo a picture with a hand in it
   * @param folder where the networks are installed
   * @throws UserError if no hand is found in the photo
   */
  public static void print(Path photo, Path folder, PrintWriter out) throws IOException, UserError {
    out.println("load average before: " + Files.readString(Path.of("/proc/loadavg")).trim());
    try (Mat picture = imread(photo.toString());
        Networks networks = Networks.open(NetworkUse.usual(folder))) {
      List<PalmDetection> palms = picture.empty() ? List.of() : networks.palms(picture, 0.5);
      if (palms.isEmpty()) {
        throw new UserError(photo + " shows no hand that the networks find");
      }
      Square hand = Square.of(palms.get(0));
      for (int threads = 1; threads <= 2; threads++) {
        setNumThreads(threads);
        time(out, threads, "palm", () -> networks.palms(picture, 0.5));
        time(out, threads, "hand", () -> networks.hand(picture, hand));
        time(out, threads, "body", () -> networks.body(picture, hand));
      }
      out.println("resident: " + resident() + " MB");
      for (int i = 1; i <= 500; i++) {
        networks.hand(picture, hand);
        if (i % 100 == 0) {
          out.println("resident after " + i + " calls: " + resident() + " MB");
        }
      }
      for (int i = 1; i <= 200; i++) {
        Networks.open(NetworkUse.usual(folder)).close();
        if (i % 25 == 0) {
          out.println("resident after opening " + i + " times: " + resident() + " MB");
        }
      }
    }
  }

  private static void time(PrintWriter out, int threads, String what, Runnable call) {
    double[] ms = new double[CALLS];
    for (int i = -WARM_UP; i < CALLS; i++) {
      long from = System.nanoTime();
      call.run();
      ms[Math.max(0, i)] = (System.nanoTime() - from) / 1e6;
    }
    Arrays.sort(ms);
    out.printf(
        Locale.ROOT,
        "%s, threads %d: fastest %.1f, median %.1f ms%n",
        what,
        threads,
        ms[0],
        ms[CALLS / 2]);
  }

  private static long resident() throws IOException {
    return Files.readAllLines(Path.of("/proc/self/status")).stream()
        .filter(line -> line.startsWith("VmRSS:"))
        .mapToLong(line -> Long.parseLong(line.replaceAll("\\D", "")) / 1024)
        .sum();
  }
}
