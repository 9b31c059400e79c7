package palmturn.work.estimate;

import java.io.BufferedInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.channels.OverlappingFileLockException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import palmturn.json.EstimateLine;
import palmturn.json.JsonException;
import palmturn.trial.UserError;

/**
 * Estimates and failures in one file, a line of JSON each, so that work that was broken off goes on
 * where it stopped. One program at a time writes it. Methods may be called from any thread.
 */
public final class EstimatesFile implements AutoCloseable {
  /** An estimate of a long clip is some megabytes. */
  private static final int LONGEST_LINE = 32 * 1024 * 1024;

  private final Path file;
  private final FileChannel channel;
  private final Map<Key, Status> there = new HashMap<>();
  private long length;
  private boolean repaired;

  private EstimatesFile(Path file, FileChannel channel) {
    this.file = file;
    this.channel = channel;
  }

  /** The entry that a file already has for a clip or trial. */
  enum Status {
    NOT,
    ESTIMATED,
    FAILED
  }

  /** A clip stays the same one where its folder is moved or named from elsewhere. */
  private record Key(
      @Nullable String clip,
      @Nullable String session,
      @Nullable String trial,
      @Nullable String hand,
      @Nullable String clipSha256) {
    static Key of(EstimateLine line) {
      // Of a session that can't be opened nothing but its place is known.
      return new Key(
          name(line.clip()),
          line.clip() == null ? line.session() : name(line.session()),
          line.trial(),
          line.hand() == null ? null : line.hand().code(),
          line.clipSha256());
    }

    private static @Nullable String name(@Nullable String path) {
      return path == null ? null : path.substring(1 + lastSeparator(path));
    }

    private static int lastSeparator(String path) {
      return Math.max(path.lastIndexOf('/'), path.lastIndexOf('\\'));
    }
  }

  /**
   * Opens a file to go on with, or makes it. A last line that is only half there, as a killed
   * program leaves it, is taken out.
   *
   * @param retry whether what failed before counts as not there
   * @throws UserError if it is something else than lines of estimates, which is left as it is, if
   *     another program writes it, or if it can't be written
   */
  // The channel must stay open as long as the file is to be added to.
  @SuppressWarnings("MustBeClosedChecker")
  public static EstimatesFile open(Path file, boolean retry) throws UserError {
    if (Files.isDirectory(file)) {
      throw new UserError(file + " is a folder: name a file in it");
    }
    FileChannel channel;
    try {
      channel =
          FileChannel.open(
              file, StandardOpenOption.CREATE, StandardOpenOption.READ, StandardOpenOption.WRITE);
    } catch (IOException e) {
      throw cantWrite(file, e);
    }
    EstimatesFile opened = new EstimatesFile(file, channel);
    try {
      opened.lock();
      opened.take(retry);
      return opened;
    } catch (IOException e) {
      throw opened.closed(cantWrite(file, e));
    } catch (UserError e) {
      throw opened.closed(e);
    }
  }

  private UserError closed(UserError why) {
    try {
      channel.close();
    } catch (IOException e) {
      why.addSuppressed(e);
    }
    return why;
  }

  private static UserError cantWrite(Path file, IOException e) {
    return new UserError(
        file + " can't be read and written: is the folder there, not read-only and not full?", e);
  }

  private void lock() throws IOException, UserError {
    try {
      // A byte that nothing is ever written to, since Windows keeps others from reading locked
      // ones.
      if (channel.tryLock(Long.MAX_VALUE - 1, 1, false) != null) {
        return;
      }
    } catch (OverlappingFileLockException e) {
      throw taken(e);
    }
    throw taken(null);
  }

  private UserError taken(@Nullable Exception cause) {
    return new UserError(
        file + " is being written by another Palmturn: wait for it, or name another file", cause);
  }

  private void take(boolean retry) throws IOException, UserError {
    InputStream in = new BufferedInputStream(Channels.newInputStream(channel), 1 << 20);
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    int line = 1;
    for (int next = in.read(); next >= 0; next = in.read()) {
      if (next != '\n') {
        bytes.write(next);
        if (bytes.size() > LONGEST_LINE) {
          throw damaged(line, "too long");
        }
        continue;
      }
      try {
        take(EstimateLine.read(bytes.toString(StandardCharsets.UTF_8)), retry);
      } catch (JsonException e) {
        throw damaged(line, e.getMessage());
      }
      length += bytes.size() + 1;
      bytes.reset();
      line++;
    }
    if (bytes.size() > 0) {
      takeLast(bytes.toString(StandardCharsets.UTF_8), line, retry);
    }
    channel.position(length);
  }

  /** A last line without its line break is half of one, or an editor took the break away. */
  private void takeLast(String text, int line, boolean retry) throws IOException, UserError {
    if (!EstimateLine.begins(text)) {
      throw damaged(line, "begins as no estimate does");
    }
    try {
      take(EstimateLine.read(text), retry);
      channel.position(channel.size());
      writeAll(new byte[] {'\n'});
      length = channel.position();
    } catch (JsonException e) {
      channel.truncate(length);
      repaired = true;
    }
  }

  private void take(EstimateLine line, boolean retry) {
    Key key = Key.of(line);
    if (line.error() == null) {
      there.put(key, Status.ESTIMATED);
    } else if (!retry) {
      there.putIfAbsent(key, Status.FAILED);
    }
  }

  private UserError damaged(int line, @Nullable String why) {
    return new UserError(
        String.format(
            Locale.ROOT,
            "%s: line %d is no estimate (%s): take it out, or name another file",
            file,
            line,
            why));
  }

  /** Returns whether a half-written last line was taken out. */
  public boolean repaired() {
    return repaired;
  }

  /**
   * Returns what there is of one; where there is nothing, it is taken for estimated from now on.
   */
  synchronized Status claim(EstimateLine of) {
    Status before = there.putIfAbsent(Key.of(of), Status.ESTIMATED);
    return before == null ? Status.NOT : before;
  }

  /**
   * Adds a line.
   *
   * @throws UserError if that is not possible; what was there before still is
   */
  synchronized void add(String line) throws UserError {
    try {
      writeAll((line + "\n").getBytes(StandardCharsets.UTF_8));
      length = channel.position();
    } catch (IOException e) {
      throw new UserError(
          "%s can't be written any further (%s): make room, then give the same command again"
              .formatted(file, e.getMessage()),
          e);
    }
  }

  private void writeAll(byte[] bytes) throws IOException {
    ByteBuffer left = ByteBuffer.wrap(bytes);
    while (left.hasRemaining()) {
      channel.write(left);
    }
  }

  @Override
  public void close() throws IOException {
    channel.close();
  }
}
