package palmturn.report;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import palmturn.trial.Coded;
import palmturn.trial.Extra;
import palmturn.trial.Reading;
import palmturn.trial.Side;
import palmturn.trial.Slap;
import palmturn.trial.Span;
import palmturn.trial.TimedBy;
import palmturn.trial.Zone;

/** Marks as CSV (RFC 4180), one a row in order of time, media seconds. */
public final class MarksCsv {
  /** The columns, in the order they are written in. */
  public static final List<String> COLUMNS =
      List.of("timeS", "endS", "kind", "side", "zone", "timedBy", "resolutionS", "note");

  private static final List<String> NEEDED = COLUMNS.subList(0, 5);
  private static final Pattern NUMBER =
      Pattern.compile("[+-]?(\\d+(\\.\\d*)?|\\.\\d+)([eE][+-]?\\d{1,3})?");

  private MarksCsv() {}

  /**
   * The content of a CSV file.
   *
   * @param slaps marks at a moment
   * @param spans faults over a stretch
   */
  public record Marks(List<Slap> slaps, List<Span> spans) {
    public Marks {
      slaps = List.copyOf(slaps);
      spans = List.copyOf(spans);
    }
  }

  private record TimedRow(double timeS, List<String> cells) {}

  /** Returns the marks of a reading as CSV. */
  public static String write(Reading reading) {
    List<TimedRow> lines = new ArrayList<>();
    for (Slap slap : reading.slaps()) {
      lines.add(
          new TimedRow(
              slap.timeS(),
              List.of(
                  number(slap.timeS()),
                  "",
                  slap.kind().code(),
                  slap.side().code(),
                  slap.zone().code(),
                  slap.timedBy().code(),
                  number(slap.resolutionS()),
                  slap.note())));
    }
    for (Span span : reading.spans()) {
      lines.add(
          new TimedRow(
              span.startS(),
              List.of(
                  number(span.startS()),
                  number(span.endS()),
                  span.kind().code(),
                  "",
                  "",
                  "",
                  "",
                  span.note())));
    }
    lines.sort(Comparator.comparingDouble(TimedRow::timeS));
    StringBuilder out = new StringBuilder(Csv.write(COLUMNS));
    lines.forEach(line -> out.append(Csv.write(line.cells())));
    return out.toString();
  }

  /**
   * Returns the marks of a CSV. The columns may stand in any order; {@code timedBy}, {@code
   * resolutionS} and {@code note} may be missing or left empty.
   *
   * @param resolutionS taken where a row says none, usually the clip's distance between frames
   * @throws MarksFormatException naming the line and what is wrong with it
   */
  public static Marks parse(String text, double resolutionS) throws MarksFormatException {
    List<Csv.Row> rows = Csv.read(text);
    if (rows.isEmpty()) {
      throw new MarksFormatException(1, "no header; it should be " + String.join(",", COLUMNS));
    }
    List<String> header = header(rows.get(0));
    List<Slap> slaps = new ArrayList<>();
    List<Span> spans = new ArrayList<>();
    for (Csv.Row row : rows.subList(1, rows.size())) {
      if (row.cells().size() != header.size()) {
        throw new MarksFormatException(
            row.line(),
            String.format(
                Locale.ROOT,
                "%d cells, where the header has %d",
                row.cells().size(),
                header.size()));
      }
      Cells cells = new Cells(row, header);
      String kind = cells.text("kind");
      if (isOf(Slap.Kind.values(), kind)) {
        slaps.add(slap(cells, Coded.parse(Slap.Kind.class, kind), resolutionS));
      } else if (isOf(Span.SpanKind.values(), kind)) {
        spans.add(span(cells, Coded.parse(Span.SpanKind.class, kind)));
      } else {
        throw new MarksFormatException(
            row.line(),
            "kind \"%s\" is not one of %s, %s"
                .formatted(
                    shown(kind), Coded.codes(Slap.Kind.class), Coded.codes(Span.SpanKind.class)));
      }
    }
    slaps.sort(Comparator.comparingDouble(Slap::timeS));
    spans.sort(Comparator.comparingDouble(Span::startS));
    return new Marks(slaps, spans);
  }

  /**
   * Returns what one row says, without a header: time, end, kind, side, zone.
   *
   * @param resolutionS as in {@link #parse}
   * @throws MarksFormatException saying what is wrong with it
   */
  public static Marks row(String row, double resolutionS) throws MarksFormatException {
    return parse(Csv.write(NEEDED) + row, resolutionS);
  }

  private static List<String> header(Csv.Row row) throws MarksFormatException {
    List<String> header = row.cells();
    for (String column : header) {
      if (!COLUMNS.contains(column)) {
        throw new MarksFormatException(
            row.line(),
            "unknown column \"%s\"; the columns are %s"
                .formatted(shown(column), String.join(",", COLUMNS)));
      }
    }
    if (new HashSet<>(header).size() != header.size()) {
      throw new MarksFormatException(row.line(), "a column is there twice");
    }
    for (String column : NEEDED) {
      if (!header.contains(column)) {
        throw new MarksFormatException(row.line(), "the column " + column + " is missing");
      }
    }
    return header;
  }

  private static Slap slap(Cells cells, Slap.Kind kind, double defaultResolutionS)
      throws MarksFormatException {
    if (!cells.text("endS").isEmpty()) {
      throw cells.wrong("endS must be empty for a " + kind.code());
    }
    double timeS = cells.number("timeS");
    TimedBy timedBy = cells.coded("timedBy", TimedBy.class, TimedBy.PICTURE);
    Double resolution = cells.optionalNumber("resolutionS");
    double resolutionS = resolution == null ? defaultResolutionS : resolution;
    if (resolutionS < 0) {
      throw cells.wrong("resolutionS must be 0 or more");
    }
    return new Slap(
        kind,
        timeS,
        cells.coded("side", Side.class, Side.UNKNOWN),
        cells.coded("zone", Zone.class, Zone.UNKNOWN),
        timedBy,
        resolutionS,
        timedBy == TimedBy.PICTURE ? timeS : null,
        null,
        true,
        cells.text("note"),
        Extra.NONE);
  }

  private static Span span(Cells cells, Span.SpanKind kind) throws MarksFormatException {
    double startS = cells.number("timeS");
    double endS = cells.number("endS");
    if (!(endS > startS)) {
      throw cells.wrong("endS must be after timeS");
    }
    if (cells.coded("side", Side.class, Side.UNKNOWN) != Side.UNKNOWN
        || cells.coded("zone", Zone.class, Zone.UNKNOWN) != Zone.UNKNOWN) {
      throw cells.wrong("side and zone must be empty for a " + kind.code());
    }
    return new Span(kind, startS, endS, cells.text("note"), Extra.NONE);
  }

  private static boolean isOf(Coded[] values, String code) {
    return Arrays.stream(values).anyMatch(value -> value.code().equals(code));
  }

  private static String number(double value) {
    return BigDecimal.valueOf(value).toPlainString();
  }

  private static String shown(String cell) {
    String line = cell.replaceAll("\\p{Cntrl}+", " ");
    return line.length() <= 40 ? line : line.substring(0, 40) + "…";
  }

  /** One row by the names of its columns. */
  private record Cells(Csv.Row row, List<String> header) {
    String text(String column) {
      int at = header.indexOf(column);
      return at < 0 ? "" : row.cells().get(at);
    }

    double number(String column) throws MarksFormatException {
      Double number = optionalNumber(column);
      if (number == null) {
        throw wrong(column + " is empty");
      }
      return number;
    }

    @Nullable Double optionalNumber(String column) throws MarksFormatException {
      String text = text(column);
      if (text.isEmpty()) {
        return null;
      }
      double value = NUMBER.matcher(text).matches() ? Double.parseDouble(text) : Double.NaN;
      if (!Double.isFinite(value)) {
        throw wrong("%s \"%s\" is not a number of seconds".formatted(column, shown(text)));
      }
      return value;
    }

    <E extends Enum<E> & Coded> E coded(String column, Class<E> type, E whenEmpty)
        throws MarksFormatException {
      String text = text(column);
      if (text.isEmpty()) {
        return whenEmpty;
      }
      try {
        return Coded.parse(type, text);
      } catch (IllegalArgumentException e) {
        throw wrong("%s \"%s\" is not one of %s".formatted(column, shown(text), Coded.codes(type)));
      }
    }

    MarksFormatException wrong(String what) {
      return new MarksFormatException(row.line(), what);
    }
  }
}
