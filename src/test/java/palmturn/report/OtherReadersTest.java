package palmturn.report;

import static org.bytedeco.ffmpeg.global.avcodec.av_packet_alloc;
import static org.bytedeco.ffmpeg.global.avcodec.av_packet_free;
import static org.bytedeco.ffmpeg.global.avcodec.av_packet_unref;
import static org.bytedeco.ffmpeg.global.avformat.av_read_frame;
import static org.bytedeco.ffmpeg.global.avformat.avformat_close_input;
import static org.bytedeco.ffmpeg.global.avformat.avformat_find_stream_info;
import static org.bytedeco.ffmpeg.global.avformat.avformat_open_input;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import nu.validator.client.EmbeddedValidator;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.bytedeco.ffmpeg.avcodec.AVPacket;
import org.bytedeco.ffmpeg.avformat.AVFormatContext;
import org.bytedeco.ffmpeg.avformat.AVInputFormat;
import org.bytedeco.ffmpeg.avutil.AVDictionary;
import org.bytedeco.ffmpeg.avutil.AVRational;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import palmturn.chart.Samples;
import palmturn.trial.Reading;
import palmturn.trial.Side;
import palmturn.trial.Slap;
import palmturn.trial.Span;
import palmturn.trial.StartedFrom;
import palmturn.trial.Zone;

/** What the program writes, read by libraries that know nothing of it. */
class OtherReadersTest {
  private static final String NASTY = "a \"b\", c;\r\nd <i> --> & 手";

  @TempDir private Path folder;

  private static Reading noted() {
    List<Slap> slaps = new ArrayList<>(Samples.everyKind().slaps());
    slaps.set(0, slaps.get(0).withNote(NASTY));
    return Samples.everyKind().withSlaps(slaps);
  }

  /** Commons CSV, by its own preset for RFC 4180. */
  @Test
  void marksAreCsvForAnotherLibrary() throws Exception {
    Reading reading = noted();
    try (CSVParser parser =
        CSVFormat.RFC4180
            .builder()
            .setHeader()
            .setSkipHeaderRecord(true)
            .get()
            .parse(new StringReader(MarksCsv.write(reading)))) {
      List<CSVRecord> records = parser.getRecords();
      assertEquals(reading.slaps().size() + reading.spans().size(), records.size());
      assertTrue(records.stream().allMatch(CSVRecord::isConsistent));
      List<CSVRecord> slaps = records.stream().filter(each -> each.get("endS").isEmpty()).toList();
      for (int i = 0; i < slaps.size(); i++) {
        assertEquals(reading.slaps().get(i).timeS(), Double.parseDouble(slaps.get(i).get("timeS")));
        assertEquals(reading.slaps().get(i).side().code(), slaps.get(i).get("side"));
      }
      assertEquals(NASTY, slaps.get(0).get("note"));
    }
  }

  private record Cue(double fromS, double lengthS, String text) {}

  /** FFmpeg's reader of WebVTT, which is that of many players. */
  @Test
  void captionsAreWebVttForAPlayer() throws Exception {
    Reading reading = noted();
    Path file = folder.resolve("marks.vtt");
    Files.writeString(file, WebVtt.write("H-07", reading));
    List<Cue> cues = cues(file);
    assertEquals(reading.slaps().size() + reading.spans().size(), cues.size());
    List<Slap> slaps = reading.slaps();
    for (Slap slap : slaps) {
      assertTrue(
          cues.stream().anyMatch(cue -> Math.abs(cue.fromS() - slap.timeS()) < 0.0006),
          () -> "no caption at " + slap.timeS());
    }
    for (Span span : reading.spans()) {
      assertTrue(
          cues.stream()
              .anyMatch(
                  cue ->
                      Math.abs(cue.fromS() - span.startS()) < 0.0006
                          && Math.abs(cue.lengthS() - (span.endS() - span.startS())) < 0.0011));
    }
    assertTrue(cues.stream().allMatch(cue -> cue.lengthS() > 0));
    String noted =
        cues.stream().map(Cue::text).filter(text -> text.contains("手")).findFirst().orElseThrow();
    assertTrue(noted.endsWith("a \"b\", c; d &lt;i&gt; --&gt; &amp; 手"), noted);
  }

  @Test
  void aReadingWithoutMarksIsStillACaptionFile() throws Exception {
    Path file = folder.resolve("none.vtt");
    Files.writeString(file, WebVtt.write("", Reading.begin("A", StartedFrom.NOTHING)));
    assertEquals(List.of(), cues(file));
    Files.writeString(
        file,
        WebVtt.write(
            "",
            Reading.begin("A", StartedFrom.NOTHING)
                .plus(Slap.onFrame(Slap.Kind.SLAP, 7200, 0.01, Side.PALM, Zone.CENTRE))));
    assertEquals(7200, cues(file).get(0).fromS(), 1e-6);
  }

  /** The Nu HTML checker without its CSS part, whose properties end in 2020. */
  @Test
  void thePageIsValidHtml() throws Exception {
    EmbeddedValidator validator = new EmbeddedValidator();
    validator.setOutputFormat(EmbeddedValidator.OutputFormat.GNU);
    for (ReportInput input :
        List.of(
            ReportSamples.twoBlocks(),
            ReportSamples.hostile(),
            ReportSamples.nothing(),
            ReportSamples.estimated())) {
      String html =
          Report.of(input)
              .html()
              .replaceAll("(?s)<style>.*?</style>", "")
              .replaceAll("base64,[^\"]*", "base64,AAAA");
      List<String> wrong =
          validator
              .validate(new ByteArrayInputStream(html.getBytes(StandardCharsets.UTF_8)))
              .lines()
              .filter(line -> line.contains(": error") || line.contains(": warning"))
              .toList();
      assertEquals(List.of(), wrong);
    }
  }

  /** Without this the test above could pass on a checker that finds nothing. */
  @Test
  void theCheckerFindsWhatIsWrong() throws Exception {
    EmbeddedValidator validator = new EmbeddedValidator();
    validator.setOutputFormat(EmbeddedValidator.OutputFormat.GNU);
    String html =
        "<!DOCTYPE html><html lang=\"en\"><head><title>a</title></head><body><ul><p>b</p></ul>";
    String found =
        validator.validate(new ByteArrayInputStream(html.getBytes(StandardCharsets.UTF_8)));
    assertTrue(found.contains("error"), found);
  }

  private static List<Cue> cues(Path file) {
    List<Cue> cues = new ArrayList<>();
    AVFormatContext context = new AVFormatContext(null);
    assertEquals(
        0,
        avformat_open_input(context, file.toString(), (AVInputFormat) null, (AVDictionary) null));
    AVPacket packet = av_packet_alloc();
    try {
      assertTrue(avformat_find_stream_info(context, (AVDictionary) null) >= 0);
      assertEquals("webvtt", context.iformat().name().getString());
      AVRational base = context.streams(0).time_base();
      double unitS = (double) base.num() / base.den();
      while (av_read_frame(context, packet) >= 0) {
        byte[] text = new byte[packet.size()];
        packet.data().get(text);
        cues.add(
            new Cue(
                packet.pts() * unitS,
                packet.duration() * unitS,
                new String(text, StandardCharsets.UTF_8)));
        av_packet_unref(packet);
      }
    } finally {
      av_packet_free(packet);
      avformat_close_input(context);
    }
    return cues;
  }
}
