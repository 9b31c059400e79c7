package palmturn.trial;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * Keys of a file that this version does not know, carried untouched from reading to writing so that
 * nothing another program wrote is lost.
 *
 * @param keys key to value, in the order of the file; values are whatever the JSON room put there
 */
public record Extra(Map<String, Object> keys) {
  /** No unknown keys. */
  public static final Extra NONE = new Extra(Map.of());

  public Extra {
    keys = Collections.unmodifiableMap(new LinkedHashMap<>(keys));
  }
}
