package palmturn.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/**
 * The script brings what is wanted and hands it over, here with a program and an npm made for it.
 */
@DisabledOnOs(OS.WINDOWS)
class GetLandmarkModelsTest {
  /** Notes what it is asked, and shows what lies in the folder that it is given. */
  private static final String PROGRAM =
      """
      #!/bin/sh
      cd "$(dirname "$0")/.."
      echo "$@" >>asked
      if [ "$2" = --wanted ]; then cat wanted; else (cd "$3" && find . -type f); fi
      """;

  private static final String NPM =
      """
      #!/bin/sh
      for last; do :; done
      mkdir package && echo "$last" >package/content
      tar -czf "$(echo "$last" | sed 's/^@//; s/[@/]/-/g').tgz" package
      rm -r package
      """;

  @TempDir Path folder;
  private Path home;

  @BeforeEach
  void aProgramWhereTwoPackagesAreWanted() throws IOException {
    home = folder.resolve("a home");
    Files.createDirectories(home.resolve("tools"));
    Files.createDirectory(home.resolve("bin"));
    Files.copy(Path.of("tools/get-landmark-models"), home.resolve("tools/get-landmark-models"));
    script("tools/palmturn", PROGRAM);
    script("bin/npm", NPM);
    Files.writeString(home.resolve("wanted"), "@net/hands@0.4.1 13\n@net/pose@0.5 41\n");
  }

  private void script(String name, String text) throws IOException {
    Path file = Files.writeString(home.resolve(name), text);
    assertTrue(file.toFile().setExecutable(true));
  }

  private record Said(int status, String text) {}

  private Said run(Object... args) throws Exception {
    List<String> command = new ArrayList<>();
    command.add("bash");
    command.add(home.resolve("tools/get-landmark-models").toString());
    Arrays.stream(args).map(Object::toString).forEach(command::add);
    Path said = home.resolve("said");
    ProcessBuilder builder =
        new ProcessBuilder(command).redirectErrorStream(true).redirectOutput(said.toFile());
    builder.environment().put("PATH", home.resolve("bin") + ":" + System.getenv("PATH"));
    int status = builder.start().waitFor();
    return new Said(status, Files.readString(said));
  }

  private String asked() throws IOException {
    return Files.readString(home.resolve("asked"));
  }

  @Test
  void bothAreBroughtUnpackedAndHandedOver() throws Exception {
    Said said = run();
    assertEquals(0, said.status(), said.text());
    assertTrue(said.text().contains("bringing @net/hands@0.4.1 with npm (13 MB, Apache-2.0)"));
    assertTrue(said.text().contains("./net-hands-0.4.1/package/content"), said.text());
    assertTrue(said.text().contains("./net-pose-0.5/package/content"), said.text());
    assertTrue(asked().contains("--origin npm pack"), asked());
  }

  @Test
  void nothingIsBroughtWhereNothingIsWanted() throws Exception {
    Files.writeString(home.resolve("wanted"), "");
    script("bin/npm", "#!/bin/sh\nexit 1\n");
    Said said = run();
    assertEquals(0, said.status(), said.text());
    assertTrue(said.text().contains("already there"), said.text());
  }

  @Test
  void withoutNetworkItIsOneLineAndNothingIsHandedOver() throws Exception {
    script(
        "bin/npm",
        "#!/bin/sh\necho 'npm error code ENOTFOUND' >&2\necho 'npm error more' >&2\nexit 1\n");
    Said said = run();
    assertEquals(1, said.status(), said.text());
    assertEquals(2, said.text().lines().count(), said.text());
    assertTrue(said.text().contains("(ENOTFOUND): check the network"), said.text());
    assertFalse(asked().contains("--from"), asked());
  }

  @Test
  void packagesThatWereBroughtByHandAreTakenPackedOrNot() throws Exception {
    Path packed = Files.createDirectory(folder.resolve("by hand"));
    for (String name : List.of("@net/hands@0.4.1", "@net/pose@0.5")) {
      assertEquals(
          0,
          new ProcessBuilder(home.resolve("bin/npm").toString(), "pack", name)
              .directory(packed.toFile())
              .start()
              .waitFor());
    }
    script("bin/npm", "#!/bin/sh\nexit 1\n");
    Said said = run("--from", packed);
    assertEquals(0, said.status(), said.text());
    assertTrue(said.text().contains("./net-pose-0.5/package/content"), said.text());

    Path unpacked = Files.createDirectories(folder.resolve("unpacked"));
    Files.writeString(unpacked.resolve("net.tflite"), "x");
    said = run("--from", unpacked);
    assertEquals(0, said.status(), said.text());
    assertTrue(said.text().contains("./net.tflite"), said.text());
    assertTrue(asked().contains("--origin " + unpacked.toRealPath()), asked());
  }

  @Test
  void wrongUseIsStatus2() throws Exception {
    assertEquals(2, run("--form", "x").status());
    assertEquals(2, run("--from").status());
    assertEquals(1, run("--from", folder.resolve("gone")).status());
    assertTrue(run("--help").text().contains("--from FOLDER"));
  }
}
