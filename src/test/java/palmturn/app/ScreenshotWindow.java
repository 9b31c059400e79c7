package palmturn.app;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import javafx.application.Platform;
import javafx.scene.image.PixelFormat;
import javafx.scene.image.WritableImage;
import javafx.stage.Stage;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.extension.ExtendWith;
import org.testfx.framework.junit5.ApplicationExtension;
import org.testfx.util.WaitForAsyncUtils;
import palmturn.app.desk.Desk;
import palmturn.app.look.Look;
import palmturn.app.look.Theme;
import palmturn.app.session.SessionFlow;

/** The real window with its estimator, and the writing of its pictures in both themes. */
@ExtendWith(ApplicationExtension.class)
abstract class ScreenshotWindow {
  static {
    System.setProperty("headless.geometry", "1600x1000-32");
  }

  static final LocalDate DAY = LocalDate.of(2026, 11, 14);

  final Path folder = Path.of(System.getProperty("screenshots", "."));
  private TestWindow opened;
  Desk desk;
  SessionFlow flow;
  Look look;
  private Stage window;

  /** Opens the window; the tests that draw it say so themselves, where the toolkit looks. */
  void start(Stage stage) {
    window = stage;
    look = new Look();
    opened = TestWindow.withEstimator();
    desk = opened.show(window, look);
    flow = opened.flow();
  }

  @AfterEach
  void close() {
    opened.close();
  }

  void size(double width, double height) {
    Platform.runLater(
        () -> {
          window.setWidth(width);
          window.setHeight(height);
        });
    WaitForAsyncUtils.waitForFxEvents();
  }

  void shoot(String name) throws Exception {
    for (Theme theme : Theme.values()) {
      Platform.runLater(() -> look.themeProperty().set(theme));
      WaitForAsyncUtils.waitForFxEvents();
      // Pictures come from another thread; what is seen must be what stands there in the end.
      Thread.sleep(700);
      WritableImage image = WaitForAsyncUtils.asyncFx(() -> window.getScene().snapshot(null)).get();
      write(
          image,
          folder.resolve(name + "-" + theme.name().toLowerCase(java.util.Locale.ROOT) + ".png"));
    }
  }

  private static void write(WritableImage image, Path file) throws IOException {
    int width = (int) image.getWidth();
    int height = (int) image.getHeight();
    int[] argb = new int[width * height];
    image
        .getPixelReader()
        .getPixels(0, 0, width, height, PixelFormat.getIntArgbInstance(), argb, 0, width);
    BufferedImage out = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
    out.setRGB(0, 0, width, height, argb, 0, width);
    ImageIO.write(out, "png", file.toFile());
  }
}
