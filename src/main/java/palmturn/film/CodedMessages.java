package palmturn.film;

import java.io.ByteArrayOutputStream;
import java.util.Map;

/**
 * The supplemental messages among the units of H.264 and H.265 (ITU-T, annexes D), of which only
 * those are kept that say how the picture is decoded or how bright it is, and are too short to say
 * more.
 */
final class CodedMessages {
  /** Most bytes of each kept kind: recovery point, mastering display, light level, transfer. */
  private static final Map<Integer, Integer> KEPT = Map.of(6, 8, 137, 24, 144, 4, 147, 1);

  private static final int H264_MESSAGES = 6;
  private static final int FIRST_OF_NO_SLICE = 32;
  private static final int HEVC_PREFIX = 39;
  private static final int HEVC_SUFFIX = 40;

  private CodedMessages() {}

  /**
   * Returns units, each behind a start code of three bytes, with no messages but those that are
   * kept.
   */
  static byte[] filtered(byte[] units, boolean hevc) {
    return filtered(units, hevc, false);
  }

  /** Returns the units of H.265 that are slices: MP4 files hold parameter sets in their header. */
  static byte[] slices(byte[] units) {
    return filtered(units, true, true);
  }

  private static byte[] filtered(byte[] units, boolean hevc, boolean slicesOnly) {
    ByteArrayOutputStream kept = new ByteArrayOutputStream(units.length);
    int from = startCode(units, 0);
    while (from < units.length) {
      int next = startCode(units, from + 3);
      int to = next;
      // Zeros after a unit belong to none.
      while (to > from + 3 && units[to - 1] == 0) {
        to--;
      }
      boolean left = slicesOnly && (units[from + 3] >> 1 & 0x3F) >= FIRST_OF_NO_SLICE;
      if (to > from + 3 && !left) {
        filter(units, from + 3, to, hevc, kept);
      }
      from = next;
    }
    return kept.toByteArray();
  }

  /** Returns where the next start code begins; the end where there is none. */
  private static int startCode(byte[] units, int from) {
    for (int i = from; i + 3 < units.length; i++) {
      if (units[i] == 0 && units[i + 1] == 0 && units[i + 2] == 1) {
        return i;
      }
    }
    return units.length;
  }

  private static void filter(
      byte[] units, int from, int to, boolean hevc, ByteArrayOutputStream kept) {
    int header = hevc ? 2 : 1;
    int type = hevc ? units[from] >> 1 & 0x3F : units[from] & 0x1F;
    boolean messages = hevc ? type == HEVC_PREFIX || type == HEVC_SUFFIX : type == H264_MESSAGES;
    byte[] content = messages ? messages(units, from + header, to) : new byte[0];
    if (!messages || content.length > 0) {
      kept.writeBytes(new byte[] {0, 0, 1});
      kept.write(units, from, messages ? Math.min(header, to - from) : to - from);
      kept.writeBytes(content);
    }
  }

  /** Returns the kept messages of a unit and its end; nothing where none is kept. */
  private static byte[] messages(byte[] units, int from, int to) {
    byte[] plain = plain(units, from, to);
    ByteArrayOutputStream kept = new ByteArrayOutputStream();
    int at = 0;
    while (at + 2 < plain.length) {
      int begun = at;
      int type = 0;
      for (; at < plain.length && plain[at] == -1; at++) {
        type += 255;
      }
      type += at < plain.length ? plain[at++] & 0xFF : 0;
      int size = 0;
      for (; at < plain.length && plain[at] == -1; at++) {
        size += 255;
      }
      size += at < plain.length ? plain[at++] & 0xFF : 0;
      if (at + size >= plain.length) {
        break;
      }
      at += size;
      if (size <= KEPT.getOrDefault(type, -1)) {
        kept.write(plain, begun, at - begun);
      }
    }
    if (kept.size() == 0) {
      return new byte[0];
    }
    kept.write(0x80);
    return escaped(kept.toByteArray());
  }

  /** Returns a unit's content without the bytes that keep start codes from appearing in it. */
  private static byte[] plain(byte[] units, int from, int to) {
    ByteArrayOutputStream plain = new ByteArrayOutputStream();
    int zeros = 0;
    for (int i = from; i < to; i++) {
      boolean escape = zeros >= 2 && units[i] == 3;
      if (!escape) {
        plain.write(units[i]);
      }
      zeros = units[i] == 0 ? zeros + 1 : 0;
    }
    return plain.toByteArray();
  }

  private static byte[] escaped(byte[] plain) {
    ByteArrayOutputStream escaped = new ByteArrayOutputStream();
    int zeros = 0;
    for (byte each : plain) {
      if (zeros >= 2 && each >= 0 && each <= 3) {
        escaped.write(3);
        zeros = 0;
      }
      escaped.write(each);
      zeros = each == 0 ? zeros + 1 : 0;
    }
    return escaped.toByteArray();
  }
}
