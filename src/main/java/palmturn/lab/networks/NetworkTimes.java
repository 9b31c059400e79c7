package palmturn.lab.networks;

import static org.bytedeco.opencv.global.opencv_core.setNumThreads;
import static org.bytedeco.opencv.global.opencv_imgcodecs.imread;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Locale;
import org.bytedeco.opencv.opencv_core.Mat;
import palmturn.estimate.hands.NetworkUse;
import palmturn.estimate.hands.Networks;
import palmturn.estimate.hands.Square;
import palmturn.work.LandmarkModels;

/**
 * Prints how long the landmark networks take, with one thread and with two, and how much memory the
 * process holds when they are opened and run over and over: by hand, on a quiet computer with
 * Linux.
 */
final class NetworkTimes {
  private static final int CALLS = 100;

  private NetworkTimes() {}

  /** Takes the name of a photo of hands. */
  public static void main(String[] args) throws IOException {
    Path folder = LandmarkModels.ofThisUser().folder();
    System.out.println("load average before: " + Files.readString(Path.of("/proc/loadavg")).trim());
    try (Mat picture = imread(args[0]);
        Networks networks = Networks.open(NetworkUse.usual(folder))) {
      Square hand = Square.of(networks.palms(picture, 0.5).get(0));
      for (int threads = 1; threads <= 2; threads++) {
        setNumThreads(threads);
        time(threads, "palm", () -> networks.palms(picture, 0.5));
        time(threads, "hand", () -> networks.hand(picture, hand));
        time(threads, "body", () -> networks.body(picture, hand));
      }
      System.out.println("resident: " + resident() + " MB");
      for (int i = 1; i <= 500; i++) {
        networks.hand(picture, hand);
        if (i % 100 == 0) {
          System.out.println("resident after " + i + " calls: " + resident() + " MB");
        }
      }
      for (int i = 1; i <= 200; i++) {
        Networks.open(NetworkUse.usual(folder)).close();
        if (i % 25 == 0) {
          System.out.println("resident after opening " + i + " times: " + resident() + " MB");
        }
      }
    }
  }

  private static void time(int threads, String what, Runnable call) {
    double[] ms = new double[CALLS];
    for (int i = -10; i < CALLS; i++) {
      long from = System.nanoTime();
      call.run();
      ms[Math.max(0, i)] = (System.nanoTime() - from) / 1e6;
    }
    Arrays.sort(ms);
    System.out.printf(
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
