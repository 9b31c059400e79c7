package palmturn.estimate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.bytedeco.javacpp.Loader;
import org.bytedeco.opencv.global.opencv_calib3d;
import org.bytedeco.opencv.global.opencv_highgui;
import org.bytedeco.opencv.global.opencv_video;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;

/** OpenCV's windows need GTK 2, which few computers have and no estimate needs. */
class WithoutWindowsTest {
  @Test
  void theStandInComesBeforeTheLibrarysOwnClass() {
    assertEquals(
        Estimator.class.getProtectionDomain().getCodeSource().getLocation(),
        opencv_highgui.class.getProtectionDomain().getCodeSource().getLocation());
  }

  @Test
  @EnabledOnOs(OS.LINUX)
  void opticalFlowAndGeometryLoadNoWindows() throws IOException {
    Loader.load(opencv_video.class);
    Loader.load(opencv_calib3d.class);
    assertFalse(Files.readString(Path.of("/proc/self/maps")).contains("jniopencv_highgui"));
  }
}
