package palmturn.chart;

import java.awt.Color;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * The look's colours for one theme, the only place they are written in Java. Ink is a person's, sea
 * the program's, clay is wrong, iris is now or chosen. Text colours contrast with paper and sheet
 * by at least 4.5, {@code edge} and {@code wave} by at least 3; {@code rule}, bands and washes are
 * decoration.
 *
 * @param paper behind everything
 * @param sheet behind what is counted
 * @param ink text and a reader's marks
 * @param ink2 second text and curves
 * @param ink3 third text
 * @param clay faults, and over a limit
 * @param sea the estimate and evidence
 * @param iris now, chosen, focused
 * @param edge outlines
 * @param wave the sound's wave
 * @param rule faint lines
 * @param inkBand uncertainty of a reader's mark
 * @param clayBand uncertainty of a fault
 * @param seaBand uncertainty of an estimate
 * @param irisBand uncertainty of the chosen mark
 * @param clayWash over slaps that a span spoils
 * @param seaWash behind what comes from the estimate
 * @param irisWash behind the chosen row
 */
public record Palette(
    Color paper,
    Color sheet,
    Color ink,
    Color ink2,
    Color ink3,
    Color clay,
    Color sea,
    Color iris,
    Color edge,
    Color wave,
    Color rule,
    Color inkBand,
    Color clayBand,
    Color seaBand,
    Color irisBand,
    Color clayWash,
    Color seaWash,
    Color irisWash) {

  public static final Palette LIGHT =
      of(
          0xEEF1ED, 0xFAFBF9, 0x15211D, 0x44524B, 0x5A6962, 0xAE350B, 0x0A6470, 0x3443C2, 0x7C8A82,
          0x7A8981, 0xD3DAD4, 0xB9C2BD, 0xEDB9A3, 0x9FCBCD, 0xC6CDF5, 0xF9E4DA, 0xDCECEC, 0xE2E6FA);

  public static final Palette DARK =
      of(
          0x0E1412, 0x161D1A, 0xE9EFEB, 0xB7C3BC, 0x97A69E, 0xFF9468, 0x66CBD3, 0xA9B6FF, 0x74857C,
          0x6B7D73, 0x2B3631, 0x4C5852, 0x74432D, 0x285B5E, 0x454F8E, 0x3B2117, 0x15302F, 0x262E55);

  /** For paper: the light colours on white. */
  public static final Palette PRINT =
      of(
          0xFFFFFF, 0xFFFFFF, 0x15211D, 0x44524B, 0x5A6962, 0xAE350B, 0x0A6470, 0x3443C2, 0x6B7A72,
          0x6B7A72, 0xC9D1CB, 0xB9C2BD, 0xEDB9A3, 0x9FCBCD, 0xC6CDF5, 0xF9E4DA, 0xE9F2F2, 0xE2E6FA);

  private static Palette of(int... rgb) {
    Color[] c = new Color[rgb.length];
    for (int i = 0; i < rgb.length; i++) {
      c[i] = new Color(rgb[i]);
    }
    return new Palette(
        c[0], c[1], c[2], c[3], c[4], c[5], c[6], c[7], c[8], c[9], c[10], c[11], c[12], c[13],
        c[14], c[15], c[16], c[17]);
  }

  /** Returns every colour under the name that style sheets give it, in the order of the record. */
  public Map<String, Color> named() {
    Map<String, Color> named = new LinkedHashMap<>();
    named.put("paper", paper);
    named.put("sheet", sheet);
    named.put("ink", ink);
    named.put("ink2", ink2);
    named.put("ink3", ink3);
    named.put("clay", clay);
    named.put("sea", sea);
    named.put("iris", iris);
    named.put("edge", edge);
    named.put("wave", wave);
    named.put("rule", rule);
    named.put("ink-band", inkBand);
    named.put("clay-band", clayBand);
    named.put("sea-band", seaBand);
    named.put("iris-band", irisBand);
    named.put("clay-wash", clayWash);
    named.put("sea-wash", seaWash);
    named.put("iris-wash", irisWash);
    return named;
  }
}
