package palmturn.json;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The state of the landmark networks as JSON for scripts. */
public final class ModelsJson {
  private ModelsJson() {}

  /**
   * One network's file.
   *
   * @param file its name
   * @param what it gives
   * @param state {@code installed}, {@code missing} or {@code damaged}
   * @param bytes the length it has to have
   * @param sha256 the sum it has to have
   * @param npmPackage the package that it comes from
   * @param version of that package
   * @param installedOn a day; null where that is not known
   * @param installedFrom in words; null where that is not known
   */
  public record Model(
      String file,
      String what,
      String state,
      long bytes,
      String sha256,
      String npmPackage,
      String version,
      @Nullable String installedOn,
      @Nullable String installedFrom) {}

  /** Returns the text that {@code models --json} prints. */
  public static String write(String folder, String licence, List<Model> models) {
    ObjectNode root = JsonText.object();
    root.put("folder", folder);
    root.put("licence", licence);
    root.put("installed", models.stream().allMatch(each -> each.state().equals("installed")));
    root.set(
        "files",
        RecordForm.all(
            models,
            "file what state bytes sha256 package=npmPackage version installedOn installedFrom"));
    return JsonText.page(root);
  }
}
