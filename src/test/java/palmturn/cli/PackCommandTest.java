package palmturn.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import palmturn.clip.ClipFile;
import palmturn.clip.FrameReader;
import palmturn.clip.Picture;
import palmturn.clip.StreamHash;

/** Sessions that are sent: out, back, changed on both sides, and tampered with. */
class PackCommandTest {
  private static final Path CLIPS = Path.of("sample-clips-synthetic");
  private static final String TRIAL = "right-baseline-1";

  @TempDir Path folder;
  private Path mine;
  private Path pack;
  private Path theirs;

  @BeforeEach
  void aSessionWithOneReading() throws IOException {
    mine = folder.resolve("mine");
    pack = folder.resolve("out.palmturn.zip");
    theirs = folder.resolve("theirs");
    run("new", mine, "--athlete", "H-07");
    run("add", mine, CLIPS.resolve("right-baseline-2.mp4"), "--hand", "right");
    marks(mine, "A", "1.0,,slap,palm,centre");
  }

  private void marks(Path session, String reader, String... rows) throws IOException {
    Path csv = folder.resolve("marks.csv");
    Files.writeString(csv, "timeS,endS,kind,side,zone\n" + String.join("\n", rows) + "\n");
    run("marks", "import", session.resolve(TRIAL), csv, "--reader", reader, "--replace");
  }

  private static Run run(Object... words) {
    Run run = Run.of(words);
    assertEquals(0, run.status(), run.err());
    return run;
  }

  private static String marks(Path session, String reader) {
    return run("marks", "export", session.resolve(TRIAL), "-", "--reader", reader).out();
  }

  private void sendAndReturn() {
    run("pack", mine, "--out", pack, "--force");
    run("unpack", pack, "--into", theirs);
  }

  @Test
  void aPackBecomesTheSameSessionElsewhere() throws Exception {
    run("note", mine, "please look at the end", "--trial", TRIAL, "--at", "2.5");
    sendAndReturn();
    assertTrue(run("verify", theirs).out().contains("all whole"));
    assertEquals(marks(mine, "A"), marks(theirs, "A"));
    assertTrue(Files.readString(theirs.resolve("session.json")).contains("please look"));
    Path sent = theirs.resolve("clips/" + TRIAL + ".mp4");
    assertEquals(StreamHash.of(CLIPS.resolve("right-baseline-2.mp4")), StreamHash.of(sent));
  }

  @Test
  void anAnswerComesBackBesideOnesOwnMarks() throws IOException {
    sendAndReturn();
    marks(theirs, "QM", "1.02,,slap,back,edge");
    run("note", theirs, "more to the middle");
    run("pack", theirs, "--out", pack, "--force", "--no-clips");
    String before = marks(mine, "A");
    Run back = run("unpack", pack, "--into", mine);
    assertEquals("", back.err());
    assertEquals(before, marks(mine, "A"));
    assertEquals(marks(theirs, "QM"), marks(mine, "QM"));
    assertTrue(Files.readString(mine.resolve("session.json")).contains("more to the middle"));
    assertTrue(run("verify", mine).out().contains("all whole"));
  }

  @Test
  void aLaterAnswerIsKeptBesideTheEarlierAndOnesOwn() throws IOException {
    sendAndReturn();
    marks(theirs, "QM", "1.02,,slap,back,edge");
    run("pack", theirs, "--out", pack, "--force", "--no-clips");
    run("unpack", pack, "--into", mine);
    String first = marks(theirs, "QM");
    assertEquals(first, marks(mine, "QM"));

    marks(theirs, "QM", "1.02,,slap,back,wrist");
    run("pack", theirs, "--out", pack, "--force", "--no-clips");
    Run later = run("unpack", pack, "--into", mine);
    List<String> names = names(later);
    assertEquals(1, names.size(), later.out());
    assertTrue(names.get(0).startsWith("QM, from the pack of "), later.out());
    assertEquals(marks(theirs, "QM"), marks(mine, names.get(0)));
    String trial = Files.readString(mine.resolve("trials/" + TRIAL + ".json"));
    assertTrue(trial.contains("edge") && trial.contains("wrist"), trial);

    marks(mine, "QM", "1.5,,slap,palm,fingers");
    String here = marks(mine, "QM");
    marks(theirs, "QM", "1.02,,slap,back,centre");
    run("pack", theirs, "--out", pack, "--force", "--no-clips");
    Run both = run("unpack", pack, "--into", mine);
    assertEquals(here, marks(mine, "QM"));
    assertEquals(marks(theirs, "QM"), marks(mine, names(both).get(0)));
    Run again = run("unpack", pack, "--into", mine);
    assertEquals(List.of(), names(again), again.out());
    assertEquals("", again.err());
  }

  private static List<String> names(Run unpacked) {
    return unpacked
        .out()
        .lines()
        .filter(line -> line.contains("brought: " + TRIAL + ": the reading by "))
        .map(line -> line.replaceFirst(".*the reading by ", ""))
        .toList();
  }

  @Test
  void limitsAreShownAndCountOnlyWhereThatIsAskedFor() throws IOException {
    Path limits = mine.resolve("limits.json");
    run("limits", "--write", limits);
    run("pack", mine, "--out", pack);
    Run shown = run("unpack", pack, "--into", theirs);
    assertFalse(Files.exists(theirs.resolve("limits.json")));
    assertTrue(shown.out().contains("limits of its own, which do not count here"), shown.out());
    assertTrue(shown.out().contains("steady CV at most, %"), shown.out());
    assertTrue(run("unpack", pack, "--into", theirs, "--limits").out().contains("limits.json"));
    assertEquals(-1, Files.mismatch(limits, theirs.resolve("limits.json")));

    Files.writeString(theirs.resolve("limits.json"), Files.readString(limits).replace("4", "5"));
    String own = Files.readString(theirs.resolve("limits.json"));
    run("unpack", pack, "--into", theirs, "--limits");
    assertEquals(own, Files.readString(theirs.resolve("limits.json")));
  }

  @Test
  void wherePlaceAndDeviceWereTheyAreGone() throws Exception {
    Path phone =
        Path.of(Objects.requireNonNull(ClipFile.class.getResource("dolbyVision-hdr.MOV")).toURI());
    run("add", mine, phone, "--hand", "left");
    sendAndReturn();
    Path sent = theirs.resolve("clips/left-baseline-1.MOV");
    assertTrue(ClipFile.open(phone).facts().location());
    assertFalse(ClipFile.open(sent).facts().location());
    assertEquals(StreamHash.of(phone).sound(), StreamHash.of(sent).sound());
    assertArrayEquals(
        ClipFile.open(phone).frames().timesS(), ClipFile.open(sent).frames().timesS(), 1e-6);
  }

  @Test
  void nothingButHandsAndElbowIsLeftAndEveryFrameKeepsItsMoment() throws Exception {
    Path json = mine.resolve("trials/" + TRIAL + ".json");
    String text = Files.readString(json);
    Files.writeString(
        json,
        text.substring(0, text.lastIndexOf('}'))
            + ", \"places\": {\"handRegion\": {\"x\": 200, \"y\": 160, \"width\": 160, \"height\": 120}}}");
    Run packed = run("pack", mine, "--out", pack, "--crop");
    assertTrue(packed.out().contains("only 40 ms around each slap"), packed.out());
    run("unpack", pack, "--into", theirs);
    String sent = Files.readString(theirs.resolve("trials/" + TRIAL + ".json"));
    assertTrue(sent.contains("\"cropped\":true") || sent.contains("\"cropped\": true"), sent);
    assertFalse(sent.contains("originalSha256"), "nothing links it to the whole clip");
    ClipFile was = ClipFile.open(mine.resolve("clips/right-baseline-2.mp4"));
    ClipFile is = ClipFile.open(theirs.resolve("clips/" + TRIAL + ".mp4"));
    assertArrayEquals(was.frames().timesS(), is.frames().timesS(), 1e-9);
    try (FrameReader reader = is.newReader()) {
      Picture picture = reader.read(10);
      assertEquals(was.facts().width(), picture.width());
      assertTrue(brightness(picture, 280, 220) > 40);
      assertTrue(brightness(picture, 280, 80) < 24, "a face would be here");
    }
  }

  @Test
  void anAnswerToACroppedClipFindsItsTrial() throws Exception {
    Path json = mine.resolve("trials/" + TRIAL + ".json");
    String text = Files.readString(json);
    Files.writeString(
        json,
        text.substring(0, text.lastIndexOf('}'))
            + ", \"places\": {\"handRegion\": {\"x\": 200, \"y\": 160, \"width\": 160, \"height\": 120}}}");
    run("pack", mine, "--out", pack, "--crop", "--sound", "none");
    run("unpack", pack, "--into", theirs);
    assertTrue(ClipFile.open(theirs.resolve("clips/" + TRIAL + ".mp4")).sound() == null);
    marks(theirs, "QM", "1.02,,slap,back,edge");
    run("pack", theirs, "--out", pack, "--force", "--no-clips");
    run("unpack", pack, "--into", mine);
    assertEquals(marks(theirs, "QM"), marks(mine, "QM"));
    assertTrue(run("verify", mine).out().contains("all whole"));
    assertEquals(2, Run.of("pack", mine, "--force", "--sound", "none").status());
  }

  private static int brightness(Picture picture, int x, int y) {
    int pixel = picture.argb()[y * picture.width() + x];
    return (pixel >> 16 & 255) + (pixel >> 8 & 255) + (pixel & 255);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "../evil.txt | no file of a session",
        "/etc/evil | no file of a session",
        "trials/../../evil.json | no file of a session",
        "clips\\evil.mp4 | no file of a session",
        "C:/evil.mp4 | no file of a session",
        "clips/con.mp4 | no file of a session",
        "clips/a/b.mp4 | no file of a session",
        "clips/a\u001b[2Jb.mp4 | no file of a session",
        "trials/x.json | no file of a session",
        "SESSION.json | no file of a session",
      })
  void aNameThatNoSessionHasIsRefused(String name, String why) throws IOException {
    run("pack", mine, "--out", pack);
    rewritten(
        (entry, text) ->
            entry.equals("palmturn-pack.json")
                ? text.replace(
                    "\"session.json\"",
                    "\"" + name.replace("\\", "\\\\").replace("\u001b", "\\u001b") + "\"")
                : text,
        entry -> entry.equals("session.json") ? name : entry);
    refused(why);
  }

  @Test
  void aFileThatIsNotInTheListIsRefused() throws IOException {
    run("pack", mine, "--out", pack);
    rewritten((entry, text) -> text, entry -> entry.equals("session.json") ? "more.json" : entry);
    refused("not in its list of files");
  }

  @Test
  void aFileThatWasTamperedWithIsRefused() throws IOException {
    run("pack", mine, "--out", pack);
    rewritten(
        (entry, text) -> entry.equals("session.json") ? text.replace("H-07", "H-08") : text,
        entry -> entry);
    refused("not what its list of files says");
  }

  @Test
  void aBombIsRefusedBeforeItGrows() throws IOException {
    run("pack", mine, "--out", pack);
    String filling = " ".repeat(300_000_000);
    rewritten(
        (entry, text) ->
            entry.equals("session.json")
                ? text + filling
                : text.replaceFirst(
                    "(\"session.json\",\"sha256\":\"\\w+\",\"bytes\":)\\d+", "$1300000000"),
        entry -> entry);
    refused("too much to be real");
  }

  @Test
  void whatIsNoPackIsRefused() throws IOException {
    Files.writeString(pack, "hello");
    refused("is no pack");
    Files.write(pack, Files.readAllBytes(CLIPS.resolve("right-baseline-2.mp4")));
    refused("is no pack");
  }

  @Test
  void reportsAreNeitherPackedNorTaken() throws IOException {
    Files.createDirectories(mine.resolve("report"));
    Files.writeString(mine.resolve("report/report.html"), "<p onclick='x()'>hello</p>");
    Files.writeString(mine.resolve("report/My notes.html"), "one = 20 slaps");
    Run packed = run("pack", mine, "--out", pack);
    assertTrue(packed.out().contains("the reports are left out"), packed.out());
    try (ZipFile zip = new ZipFile(pack.toFile())) {
      assertTrue(zip.stream().noneMatch(entry -> entry.getName().startsWith("report/")));
    }
    withReport();
    Run unpacked = run("unpack", pack, "--into", theirs);
    assertTrue(unpacked.out().contains("left: its reports"), unpacked.out());
    try (Stream<Path> reports = Files.list(theirs.resolve("report"))) {
      assertEquals(0, reports.count());
    }
  }

  /** Adds a page to the pack and to its list, as older versions did. */
  private void withReport() throws IOException {
    byte[] page = "<svg/onload=x()>".getBytes(java.nio.charset.StandardCharsets.UTF_8);
    rewritten(
        (entry, text) ->
            entry.equals("palmturn-pack.json")
                ? text.replaceFirst(
                    "\"entries\":\\s*\\[",
                    "\"entries\":[{\"name\":\"report/report.html\",\"sha256\":\""
                        + "0".repeat(64)
                        + "\",\"bytes\":"
                        + page.length
                        + "},")
                : text,
        entry -> entry,
        Map.of("report/report.html", page));
  }

  @Test
  void theClipsOwnNameIsInNoPack() throws IOException {
    Path named = folder.resolve("Firstname_Lastname_0714.mp4");
    Files.copy(CLIPS.resolve("right-baseline-2.mp4"), named);
    run("add", mine, named, "--hand", "left");
    for (String how : List.of("--no-clips", "--debug")) {
      run("pack", mine, "--out", pack, "--force", how);
      try (ZipFile zip = new ZipFile(pack.toFile())) {
        for (ZipEntry entry : java.util.Collections.list(zip.entries())) {
          String content =
              new String(
                  zip.getInputStream(entry).readAllBytes(),
                  java.nio.charset.StandardCharsets.ISO_8859_1);
          assertFalse((entry.getName() + content).contains("Firstname"), entry.getName());
        }
      }
    }
  }

  @Test
  void aFileAmongTheClipsThatIsNoTrialsClipIsRefused() throws IOException {
    run("pack", mine, "--out", pack);
    byte[] bytes = {1, 2, 3};
    rewritten(
        (entry, text) ->
            entry.equals("palmturn-pack.json")
                ? text.replaceFirst(
                    "\"entries\":\\s*\\[",
                    "\"entries\":[{\"name\":\"clips/run.sh\",\"sha256\":\"039058c6f2c0cb492c533b0a4d14ef77cc0f78abccced5287d84a1a2011cfb81\",\"bytes\":3},")
                : text,
        entry -> entry,
        Map.of("clips/run.sh", bytes));
    refused("is the clip of no trial");
  }

  @Test
  void aPackOfAnotherSessionIsNotMixedIn() {
    run("pack", mine, "--out", pack);
    Path other = folder.resolve("other");
    run("new", other, "--athlete", "H-09");
    Run run = Run.of("unpack", pack, "--into", other);
    assertEquals(1, run.status());
    assertTrue(run.err().contains("unpack it into a new folder"), run.err());
  }

  private void refused(String why) {
    Run run = Run.of("unpack", pack, "--into", theirs);
    assertEquals(1, run.status(), run.out());
    assertEquals(1, run.errorLines(), run.err());
    assertTrue(run.err().contains(why), run.err());
    assertFalse(run.err().contains("\u001b"));
    assertFalse(Files.exists(theirs));
    assertFalse(Files.exists(folder.resolve("evil.txt")));
    try (Stream<Path> left = Files.list(folder)) {
      assertEquals(List.of(), left.filter(file -> file.toString().endsWith(".part")).toList());
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  private interface Text {
    String of(String entry, String text);
  }

  private interface Name {
    String of(String entry);
  }

  /** Writes the pack anew with other texts and names; clips are left out of the file and list. */
  private void rewritten(Text texts, Name names) throws IOException {
    rewritten(texts, names, Map.of());
  }

  private void rewritten(Text texts, Name names, Map<String, byte[]> more) throws IOException {
    Path out = folder.resolve("tampered.zip");
    try (ZipFile in = new ZipFile(pack.toFile());
        ZipOutputStream zip = new ZipOutputStream(Files.newOutputStream(out))) {
      for (ZipEntry entry : List.copyOf(java.util.Collections.list(in.entries()))) {
        byte[] content = in.getInputStream(entry).readAllBytes();
        zip.putNextEntry(new ZipEntry(names.of(entry.getName())));
        zip.write(
            entry.getName().endsWith(".json")
                ? texts
                    .of(
                        entry.getName(),
                        new String(content, java.nio.charset.StandardCharsets.UTF_8))
                    .getBytes(java.nio.charset.StandardCharsets.UTF_8)
                : content);
        zip.closeEntry();
      }
      for (Map.Entry<String, byte[]> each : more.entrySet()) {
        zip.putNextEntry(new ZipEntry(each.getKey()));
        zip.write(each.getValue());
        zip.closeEntry();
      }
    }
    Files.move(out, pack, java.nio.file.StandardCopyOption.REPLACE_EXISTING);
  }
}
