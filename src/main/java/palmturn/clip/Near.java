package palmturn.clip;

import java.util.TreeMap;
import java.util.function.Consumer;
import java.util.function.IntToDoubleFunction;
import java.util.function.ToLongFunction;
import org.jspecify.annotations.Nullable;

/** Things kept by frame within a bound; those farthest from where one is go first. */
final class Near<T> {
  private final TreeMap<Integer, T> kept = new TreeMap<>();
  private final ToLongFunction<T> size;
  private final Consumer<T> gone;
  private long bytes;

  /**
   * @param size of a thing, bytes
   * @param gone is handed each thing that is kept no longer
   */
  Near(ToLongFunction<T> size, Consumer<T> gone) {
    this.size = size;
    this.gone = gone;
  }

  boolean has(int index) {
    return kept.containsKey(index);
  }

  @Nullable T get(int index) {
    return kept.get(index);
  }

  long bytes() {
    return bytes;
  }

  void put(int index, T thing) {
    T before = kept.put(index, thing);
    bytes += size.applyAsLong(thing);
    if (before != null) {
      drop(before);
    }
  }

  /** Lets the farthest things go until they are within a bound; the nearest is kept in any case. */
  void trim(long maxBytes, IntToDoubleFunction farness) {
    while (bytes > maxBytes && kept.size() > 1) {
      int first = kept.firstKey();
      int last = kept.lastKey();
      int far = farness.applyAsDouble(first) > farness.applyAsDouble(last) ? first : last;
      T thing = kept.remove(far);
      if (thing != null) {
        drop(thing);
      }
    }
  }

  void clear() {
    kept.values().forEach(gone);
    kept.clear();
    bytes = 0;
  }

  private void drop(T thing) {
    bytes -= size.applyAsLong(thing);
    gone.accept(thing);
  }
}
