package palmturn.estimate.hands;

import static org.bytedeco.tensorflowlite.global.tensorflowlite.TfLiteInterpreterAllocateTensors;
import static org.bytedeco.tensorflowlite.global.tensorflowlite.TfLiteInterpreterCreate;
import static org.bytedeco.tensorflowlite.global.tensorflowlite.TfLiteInterpreterDelete;
import static org.bytedeco.tensorflowlite.global.tensorflowlite.TfLiteInterpreterGetInputTensor;
import static org.bytedeco.tensorflowlite.global.tensorflowlite.TfLiteInterpreterGetOutputTensor;
import static org.bytedeco.tensorflowlite.global.tensorflowlite.TfLiteInterpreterGetOutputTensorCount;
import static org.bytedeco.tensorflowlite.global.tensorflowlite.TfLiteInterpreterInvoke;
import static org.bytedeco.tensorflowlite.global.tensorflowlite.TfLiteModelCreate;
import static org.bytedeco.tensorflowlite.global.tensorflowlite.TfLiteModelDelete;
import static org.bytedeco.tensorflowlite.global.tensorflowlite.TfLiteTensorByteSize;
import static org.bytedeco.tensorflowlite.global.tensorflowlite.TfLiteTensorCopyFromBuffer;
import static org.bytedeco.tensorflowlite.global.tensorflowlite.TfLiteTensorCopyToBuffer;
import static org.bytedeco.tensorflowlite.global.tensorflowlite.TfLiteTensorName;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;
import org.bytedeco.javacpp.BytePointer;
import org.bytedeco.javacpp.FloatPointer;
import org.bytedeco.opencv.opencv_core.Mat;
import org.bytedeco.tensorflowlite.TfLiteInterpreter;
import org.bytedeco.tensorflowlite.TfLiteInterpreterOptions;
import org.bytedeco.tensorflowlite.TfLiteModel;
import org.bytedeco.tensorflowlite.TfLiteTensor;

/** A network run by TensorFlow Lite, which its file was made for: what OpenCV is held against. */
final class TensorFlowLite implements AutoCloseable {
  private final BytePointer bytes;
  private final TfLiteModel model;
  private final TfLiteInterpreter interpreter;

  TensorFlowLite(Path file) throws IOException {
    byte[] all = Files.readAllBytes(file);
    bytes = new BytePointer(all);
    model = TfLiteModelCreate(bytes, all.length);
    interpreter = TfLiteInterpreterCreate(model, (TfLiteInterpreterOptions) null);
    assertEquals(0, TfLiteInterpreterAllocateTensors(interpreter), file.toString());
  }

  /**
   * Returns the outputs by name.
   *
   * @param picture blue, green, red, as large as the network wants it
   */
  Map<String, float[]> run(Mat picture) {
    byte[] bgr = new byte[(int) picture.total() * 3];
    picture.data().capacity(bgr.length).get(bgr);
    float[] rgb = new float[bgr.length];
    for (int i = 0; i < bgr.length; i++) {
      rgb[i] = (bgr[i - i % 3 + 2 - i % 3] & 0xff) / 255f;
    }
    TfLiteTensor input = TfLiteInterpreterGetInputTensor(interpreter, 0);
    try (FloatPointer values = new FloatPointer(rgb)) {
      assertEquals(0, TfLiteTensorCopyFromBuffer(input, values, 4L * rgb.length), "input");
    }
    assertEquals(0, TfLiteInterpreterInvoke(interpreter), "run");
    Map<String, float[]> outputs = new HashMap<>();
    for (int i = 0; i < TfLiteInterpreterGetOutputTensorCount(interpreter); i++) {
      TfLiteTensor output = TfLiteInterpreterGetOutputTensor(interpreter, i);
      float[] values = new float[(int) (TfLiteTensorByteSize(output) / 4)];
      try (FloatPointer copy = new FloatPointer(values.length)) {
        assertEquals(0, TfLiteTensorCopyToBuffer(output, copy, 4L * values.length), "output");
        copy.get(values);
      }
      outputs.put(TfLiteTensorName(output).getString(), values);
    }
    return outputs;
  }

  @Override
  public void close() {
    TfLiteInterpreterDelete(interpreter);
    TfLiteModelDelete(model);
    bytes.close();
  }
}
