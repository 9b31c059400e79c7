package palmturn.film;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;

/**
 * The end of the video track's edit list in an MP4 or MOV file, which hides frames after it. FFmpeg
 * writes the start of an edit but not its end (boxes and edit lists: ISO/IEC 14496-12, 8.2 to 8.6).
 */
final class EditListEnd {
  private static final int HEADER = 8;

  private EditListEnd() {}

  /**
   * A box: a part of the file with a name of four letters.
   *
   * @param from first byte of its content
   * @param to the byte after it
   */
  private record Box(long from, long to) {}

  /**
   * Sets the duration of the last edit.
   *
   * @param lengthS seconds from the first picture that is shown
   * @throws IOException if the file has no edit list
   */
  static void set(Path file, double lengthS) throws IOException {
    try (RandomAccessFile open = new RandomAccessFile(file.toFile(), "rw")) {
      Box movie = box(open, new Box(0, open.length()), "moov");
      Box header = movie == null ? null : box(open, movie, "mvhd");
      Box track = movie == null ? null : picture(open, movie);
      Box edits = track == null ? null : box(open, track, "edts");
      Box list = edits == null ? null : box(open, edits, "elst");
      if (header == null || list == null) {
        throw new IOException(file.getFileName() + " can't be given an end of its picture");
      }
      open.seek(header.from());
      open.seek(header.from() + (open.readByte() == 1 ? 20 : 12));
      long ticksPerS = open.readInt();
      open.seek(list.from());
      boolean wide = open.readByte() == 1;
      open.seek(list.from() + 4);
      int last = open.readInt() - 1;
      open.seek(list.from() + HEADER + (long) last * (wide ? 20 : 12));
      long ticks = Math.round(lengthS * ticksPerS);
      if (wide) {
        open.writeLong(ticks);
      } else {
        open.writeInt(Math.toIntExact(ticks));
      }
    }
  }

  private static @Nullable Box picture(RandomAccessFile open, Box movie) throws IOException {
    Box rest = movie;
    for (Box track = box(open, rest, "trak"); track != null; track = box(open, rest, "trak")) {
      Box media = box(open, track, "mdia");
      Box handler = media == null ? null : box(open, media, "hdlr");
      if (handler != null) {
        open.seek(handler.from() + HEADER);
        if (fourLetters(open).equals("vide")) {
          return track;
        }
      }
      rest = new Box(track.to(), movie.to());
    }
    return null;
  }

  /** Returns the first box of a name directly inside another; null without one. */
  private static @Nullable Box box(RandomAccessFile open, Box in, String name) throws IOException {
    long at = in.from();
    while (at + HEADER <= in.to()) {
      open.seek(at);
      long size = Integer.toUnsignedLong(open.readInt());
      String here = fourLetters(open);
      long from = at + HEADER;
      if (size == 1) {
        size = open.readLong();
        from += HEADER;
      } else if (size == 0) {
        size = in.to() - at;
      }
      if (size < from - at) {
        return null;
      }
      if (here.equals(name)) {
        return new Box(from, at + size);
      }
      at += size;
    }
    return null;
  }

  private static String fourLetters(RandomAccessFile open) throws IOException {
    byte[] letters = new byte[4];
    open.readFully(letters);
    return new String(letters, StandardCharsets.ISO_8859_1);
  }
}
