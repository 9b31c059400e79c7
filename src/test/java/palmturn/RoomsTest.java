package palmturn;

import static com.tngtech.archunit.base.DescribedPredicate.not;
import static com.tngtech.archunit.core.domain.JavaCall.Predicates.target;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.assignableTo;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.belongToAnyOf;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.core.domain.properties.HasName.Predicates.nameMatching;
import static com.tngtech.archunit.core.domain.properties.HasOwner.Predicates.With.owner;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.net.URI;
import java.net.URISyntaxException;
import java.net.URL;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** Keeps the rooms apart: who may import whom, and which library is used where. */
class RoomsTest {
  /** The program's classes, imported when a rule is checked: DocsTest reads only the lists. */
  private static final class Imported {
    static final JavaClasses CLASSES =
        new ClassFileImporter()
            .withImportOption(new ImportOption.DoNotIncludeTests())
            .importPackages("palmturn");
  }

  /** Room to the rooms it may import; docs/architecture.md draws the same. */
  static final Map<String, List<String>> MAY_IMPORT = new TreeMap<>();

  static {
    MAY_IMPORT.put("trial", List.of());
    MAY_IMPORT.put("numbers", List.of());
    MAY_IMPORT.put("edit", List.of("trial"));
    MAY_IMPORT.put("clip", List.of("trial"));
    MAY_IMPORT.put("estimate", List.of("trial", "numbers", "clip"));
    MAY_IMPORT.put("measure", List.of("trial", "numbers"));
    MAY_IMPORT.put("settle", List.of("trial", "numbers"));
    MAY_IMPORT.put("advise", List.of("trial", "numbers", "measure"));
    // Intervals and agreement are records of numbers, which measure and settle hand on.
    MAY_IMPORT.put("wording", List.of("trial", "numbers", "measure", "settle", "advise"));
    MAY_IMPORT.put("json", List.of("trial", "numbers", "measure", "settle", "advise"));
    MAY_IMPORT.put("store", List.of("trial", "clip", "json"));
    MAY_IMPORT.put("film", List.of("trial", "clip"));
    MAY_IMPORT.put("camera", List.of("trial", "clip"));
    MAY_IMPORT.put("chart", List.of("trial", "measure", "wording"));
    MAY_IMPORT.put(
        "report", List.of("trial", "numbers", "measure", "settle", "advise", "wording", "chart"));
    MAY_IMPORT.put("settings", List.of("trial", "json"));
    MAY_IMPORT.put(
        "work",
        List.of(
            "trial",
            "numbers",
            "clip",
            "estimate",
            "measure",
            "settle",
            "advise",
            "wording",
            "json",
            "store",
            "film",
            "camera",
            "chart",
            "report",
            "settings"));
    MAY_IMPORT.put(
        "cli",
        List.of(
            "work",
            "wording",
            "trial",
            "numbers",
            "clip",
            "estimate",
            "measure",
            "settle",
            "advise",
            "report",
            "store",
            "settings"));
    MAY_IMPORT.put(
        "app",
        List.of(
            "work",
            "edit",
            "wording",
            "chart",
            "trial",
            "numbers",
            "clip",
            "estimate",
            "measure",
            "settle",
            "advise",
            "report",
            "store",
            "film",
            "settings"));
  }

  /** Library to the rooms that may use it. */
  private static final Map<String, List<String>> LIBRARIES =
      Map.ofEntries(
          Map.entry("org.bytedeco.ffmpeg..", List.of("clip", "film", "camera", "lab")),
          Map.entry("org.bytedeco.opencv..", List.of("estimate", "lab")),
          Map.entry("org.hipparchus..", List.of("numbers")),
          Map.entry("com.fasterxml.jackson..", List.of("json", "lab")),
          Map.entry("org.jfree..", List.of("chart", "app")),
          Map.entry("gg.jte..", List.of("report")),
          Map.entry("picocli..", List.of("cli", "lab")),
          Map.entry("me.tongfei..", List.of("cli")),
          Map.entry("javafx..", List.of("app")),
          Map.entry("com.openhtmltopdf..", List.of("report")),
          Map.entry("org.apache.pdfbox..", List.of("report", "lab")),
          Map.entry("org.apache.fontbox..", List.of("report")));

  /** Rooms that touch no file, no pixel and no screen. */
  private static final List<String> PURE =
      List.of("trial", "numbers", "edit", "measure", "settle", "advise", "wording");

  @TestFactory
  Stream<DynamicTest> everyRoomImportsOnlyWhatTheDesignLetsIt() {
    return MAY_IMPORT.entrySet().stream()
        .map(
            room ->
                DynamicTest.dynamicTest(
                    room.getKey(),
                    () -> {
                      List<String> others = new ArrayList<>(MAY_IMPORT.keySet());
                      others.remove(room.getKey());
                      others.removeAll(room.getValue());
                      noClasses()
                          .that()
                          .resideInAPackage(in(room.getKey()))
                          .should()
                          .dependOnClassesThat()
                          .resideInAnyPackage(
                              others.stream().map(RoomsTest::in).toArray(String[]::new))
                          .because("a newcomer must see from the folders what happens to a clip")
                          .allowEmptyShould(true)
                          .check(Imported.CLASSES);
                    }));
  }

  @TestFactory
  Stream<DynamicTest> everyLibraryStaysInItsRooms() {
    return LIBRARIES.entrySet().stream()
        .map(
            library ->
                DynamicTest.dynamicTest(
                    library.getKey(),
                    () ->
                        noClasses()
                            .that()
                            .resideOutsideOfPackages(
                                library.getValue().stream()
                                    .map(RoomsTest::in)
                                    .toArray(String[]::new))
                            .should()
                            .dependOnClassesThat()
                            .resideInAPackage(library.getKey())
                            .because("a library is replaced in one room, not in ten")
                            .allowEmptyShould(true)
                            .check(Imported.CLASSES)));
  }

  @TestFactory
  Stream<DynamicTest> pureRoomsTouchNoFile() {
    return PURE.stream()
        .map(
            room ->
                DynamicTest.dynamicTest(
                    room,
                    () ->
                        noClasses()
                            .that()
                            .resideInAPackage(in(room))
                            .should()
                            .dependOnClassesThat()
                            .resideInAnyPackage("java.io..", "java.nio.file..", "java.awt..")
                            .because("what computes must be testable with nothing but arrays")
                            .allowEmptyShould(true)
                            .check(Imported.CLASSES)));
  }

  @Test
  void theProductKnowsNothingOfTheLaboratory() {
    noClasses()
        .that()
        .resideOutsideOfPackage(in("lab"))
        .should()
        .dependOnClassesThat()
        .resideInAPackage(in("lab"))
        .because("the laboratory has a jar of its own, which users never install")
        .check(Imported.CLASSES);
  }

  @Test
  void noCircleBetweenSubRooms() {
    for (String room : List.of("estimate", "work")) {
      slices()
          .matching("palmturn.(" + room + ".*)..")
          .should()
          .beFreeOfCycles()
          .because("a circle makes two sub-rooms one")
          .check(Imported.CLASSES);
    }
  }

  @Test
  void noCircleBetweenRooms() {
    slices()
        .matching("palmturn.(*)..")
        .should()
        .beFreeOfCycles()
        .because("a circle makes two rooms one")
        .allowEmptyShould(true)
        .check(Imported.CLASSES);
  }

  /** Clips stay on the computer: no class of ours can so much as name a connection. */
  @Test
  void nothingOpensANetworkConnection() {
    noClasses()
        .should()
        .dependOnClassesThat(
            resideInAnyPackage(
                    "java.net..",
                    "javax.net..",
                    "java.rmi..",
                    "javax.naming..",
                    "com.sun.net..",
                    "sun.net..",
                    "javafx.scene.web..",
                    "javafx.scene.media..")
                .and(not(belongToAnyOf(URI.class, URL.class, URISyntaxException.class))))
        .orShould()
        .dependOnClassesThat()
        .haveNameMatching("java\\.nio\\.channels\\..*(Socket|Datagram|Network).*")
        .orShould()
        .callMethodWhere(
            target(owner(assignableTo(URL.class)))
                .and(target(nameMatching("open.*|getContent|getHost.*"))))
        .because("nothing of an athlete may leave the computer")
        .check(Imported.CLASSES);
  }

  /**
   * FFmpeg knows many protocols and lists of files: one place lets it read films from disk only.
   */
  @Test
  void everyFilmIsOpenedInOnePlace() {
    noClasses()
        .that()
        .doNotHaveFullyQualifiedName("palmturn.clip.FilmInput")
        .should()
        .callMethodWhere(target(nameMatching("avformat_open_input|avio_open2.*|avio_open_dir")))
        .because("a clip from outside must not make FFmpeg open anything else")
        .check(Imported.CLASSES);
  }

  private static String in(String room) {
    return "palmturn." + room + "..";
  }
}
