package palmturn.clip;

import java.util.TreeMap;
import java.util.function.Consumer;
import java.util.function.IntToDoubleFunction;
import java.util.function.ToLongFunction;
import org.jspecify.annotations.Nullable;

/** Values by frame index within a bound on their size; the farthest are evicted first. */
final class FrameStore<T> {
  private final TreeMap<Integer, T> kept = new TreeMap<>();
  private final ToLongFunction<T> size;
  private final Consumer<T> gone;
  private long bytes;

  /**
   * @param size of a value, bytes
   * @param gone receives each evicted value
   */
  FrameStore(ToLongFunction<T> size, Consumer<T> gone) {
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

  /** Evicts the farthest values until the rest fit a bound; the nearest always stays. */
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
