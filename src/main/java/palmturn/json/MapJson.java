package palmturn.json;

import java.util.Map;
import org.jspecify.annotations.Nullable;

/** A form that has no room for a record of its own: figures that only scripts read. */
public final class MapJson {
  private MapJson() {}

  /** Returns maps, lists, texts, numbers, truths and nulls as text laid out to be read. */
  public static String page(Map<String, ? extends @Nullable Object> keys) {
    return JsonText.page(JsonText.tree(keys));
  }
}
