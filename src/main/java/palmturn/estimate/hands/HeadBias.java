package palmturn.estimate.hands;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.Map;

/**
 * The constants that a network adds in its last layers, read from its own file: OpenCV 4.13 leaves
 * them out of the fully connected layers of a TensorFlow Lite file. The file is a FlatBuffer;
 * numbers of fields and operators are those of TensorFlow Lite's public schema, version 3.
 */
final class HeadBias {
  /** Codes of TensorFlow Lite's schema. */
  private static final int FULLY_CONNECTED = 9;

  private static final int HALF_FLOAT = 1;

  private final ByteBuffer file;
  private final int graph;

  /** Elements that may still be read, bounded since a damaged file could hold a cycle. */
  private int left;

  private HeadBias(byte[] bytes) {
    file = ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN);
    left = bytes.length;
    graph = element(vector(file.getInt(0), 2), 0);
  }

  /**
   * Returns the constants by the name of the output that they belong to; outputs without a fully
   * connected layer are left out.
   *
   * @param bytes a whole TensorFlow Lite file
   * @throws IllegalArgumentException if it is not one
   */
  static Map<String, float[]> of(byte[] bytes) {
    try {
      return new HeadBias(bytes).read();
    } catch (IndexOutOfBoundsException e) {
      throw new IllegalArgumentException("this is not a whole TensorFlow Lite file", e);
    }
  }

  private Map<String, float[]> read() {
    int operators = vector(graph, 3);
    Map<Integer, Integer> madeBy = new HashMap<>();
    int operatorCount = count(operators);
    for (int i = 0; i < operatorCount; i++) {
      int operator = element(operators, i);
      int outputs = vector(operator, 2);
      int outputCount = count(outputs);
      for (int k = 0; k < outputCount; k++) {
        madeBy.put(file.getInt(outputs + 4 + 4 * k), operator);
      }
    }
    Map<String, float[]> found = new HashMap<>();
    int outputs = vector(graph, 2);
    int outputCount = count(outputs);
    for (int k = 0; k < outputCount; k++) {
      int tensor = file.getInt(outputs + 4 + 4 * k);
      Integer operator = madeBy.get(tensor);
      // Between a layer and the output lie a logistic curve or another shape, with one input each.
      while (operator != null && code(operator) != FULLY_CONNECTED && inputs(operator) == 1) {
        operator = madeBy.get(input(operator, 0));
      }
      if (operator != null && code(operator) == FULLY_CONNECTED) {
        found.put(name(tensor), constants(input(operator, 2), madeBy));
      }
    }
    return found;
  }

  private float[] constants(int tensor, Map<Integer, Integer> madeBy) {
    Integer unpacking = madeBy.get(tensor);
    int kept = tensor(unpacking == null ? tensor : input(unpacking, 0));
    int table = field(kept, 2);
    int buffer = element(vector(file.getInt(0), 4), table == 0 ? 0 : file.getInt(table));
    int data = vector(buffer, 0);
    int type = field(kept, 1);
    boolean half = type != 0 && file.get(type) == HALF_FLOAT;
    float[] values = new float[count(data) / (half ? 2 : 4)];
    for (int i = 0; i < values.length; i++) {
      values[i] = half ? half(file.getShort(data + 4 + 2 * i)) : file.getFloat(data + 4 + 4 * i);
    }
    return values;
  }

  /** Returns the value of an IEEE 754 number of 16 bits. */
  private static float half(short bits) {
    int exponent = bits >> 10 & 0x1f;
    int fraction = bits & 0x3ff;
    double size =
        exponent == 0
            ? Math.scalb((double) fraction, -24)
            : Math.scalb(1024.0 + fraction, exponent - 25);
    return (float) (bits < 0 ? -size : size);
  }

  private int code(int operator) {
    int index = field(operator, 0);
    int codes = vector(file.getInt(0), 1);
    int code = element(codes, index == 0 ? 0 : file.getInt(index));
    int field = field(code, 0);
    return field == 0 ? 0 : file.get(field);
  }

  private int inputs(int operator) {
    return count(vector(operator, 1));
  }

  private int input(int operator, int i) {
    return file.getInt(vector(operator, 1) + 4 + 4 * i);
  }

  private int tensor(int index) {
    return element(vector(graph, 0), index);
  }

  private String name(int tensor) {
    int at = vector(tensor(tensor), 3);
    byte[] text = new byte[count(at)];
    file.get(at + 4, text);
    return new String(text, StandardCharsets.UTF_8);
  }

  /** Returns the offset of a table's field, 0 where it has its default. */
  private int field(int table, int number) {
    int layout = table - file.getInt(table);
    int at = 4 + 2 * number;
    int offset = at < file.getShort(layout) ? file.getShort(layout + at) : 0;
    return offset == 0 ? 0 : table + offset;
  }

  /** Returns the offset of a vector (or a text): its length, then its elements. */
  private int vector(int table, int number) {
    int at = field(table, number);
    if (at == 0) {
      throw new IndexOutOfBoundsException("no field " + number);
    }
    return at + file.getInt(at);
  }

  /** Returns the number of a vector's elements. */
  private int count(int vector) {
    int n = file.getInt(vector);
    if (n < 0 || n >= left) {
      throw new IndexOutOfBoundsException("more elements than the file can have");
    }
    left -= n + 1;
    return n;
  }

  private int element(int vector, int i) {
    int at = vector + 4 + 4 * i;
    return at + file.getInt(at);
  }
}
