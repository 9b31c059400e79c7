package palmturn.film;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.awt.image.DataBufferInt;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.function.Consumer;
import palmturn.clip.Picture;

/**
 * A writer of a short clip for showing: one or two pictures side by side with graphics over them.
 * It has no sound and none of the source's metadata.
 */
public final class ReelWriter implements AutoCloseable {
  /** Pixels across. */
  public static final int WIDTH = 1280;

  /** Pixels down. */
  public static final int HEIGHT = 720;

  /** Pictures a second. */
  public static final int FPS = 30;

  private static final int BITS_PER_S = 4_000_000;

  private final ClipWriter clip;
  private final BufferedImage canvas =
      new BufferedImage(WIDTH, HEIGHT, BufferedImage.TYPE_INT_ARGB);
  private final Color ground;
  private long shown;

  /**
   * A picture and where it goes.
   *
   * @param picture a frame
   * @param part of the frame that is shown, pixels
   * @param into where on the reel, pixels; the part keeps its proportions and is centred in it
   */
  public record Pane(Picture picture, Rectangle part, Rectangle into) {}

  private ReelWriter(ClipWriter clip, Color ground) {
    this.clip = clip;
    this.ground = ground;
  }

  /**
   * Begins a reel, replacing a file of that name.
   *
   * @param ground colour behind the pictures
   * @throws IOException if the file can't be written, in one line
   */
  public static ReelWriter create(Path path, Color ground) throws IOException {
    return new ReelWriter(
        ClipWriter.create(path, new ClipWriter.Settings(WIDTH, HEIGHT, FPS, BITS_PER_S, FPS, 0, 0)),
        ground);
  }

  /**
   * Adds one picture, shown for 1/{@link #FPS} s.
   *
   * @param over draws over the panes
   */
  public void show(List<Pane> panes, Consumer<Graphics2D> over) throws IOException {
    Graphics2D graphics = canvas.createGraphics();
    graphics.setRenderingHint(
        RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BILINEAR);
    graphics.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
    graphics.setRenderingHint(
        RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
    graphics.setColor(ground);
    graphics.fillRect(0, 0, WIDTH, HEIGHT);
    for (Pane pane : panes) {
      draw(graphics, pane);
    }
    over.accept(graphics);
    graphics.dispose();
    int[] pixels = ((DataBufferInt) canvas.getRaster().getDataBuffer()).getData();
    clip.picture(shown / (double) FPS, pixels);
    shown++;
  }

  private static void draw(Graphics2D graphics, Pane pane) {
    Rectangle part = pane.part();
    Rectangle into = fitted(part, pane.into());
    graphics.drawImage(
        Stills.image(pane.picture()),
        into.x,
        into.y,
        into.x + into.width,
        into.y + into.height,
        part.x,
        part.y,
        part.x + part.width,
        part.y + part.height,
        null);
  }

  /** Returns the place in a box that a part of a picture fills, as large as its shape allows. */
  public static Rectangle fitted(Rectangle part, Rectangle into) {
    double scale = Math.min(into.width / (double) part.width, into.height / (double) part.height);
    int width = (int) Math.round(part.width * scale);
    int height = (int) Math.round(part.height * scale);
    return new Rectangle(
        into.x + (into.width - width) / 2, into.y + (into.height - height) / 2, width, height);
  }

  /** Returns how long the reel is by now, seconds. */
  public double lengthS() {
    return shown / (double) FPS;
  }

  /** Ends the reel: only after this is the file whole. */
  public void finish() throws IOException {
    clip.finish();
  }

  /** Frees everything; a reel that was not finished is removed. */
  @Override
  public void close() throws IOException {
    clip.close();
  }
}
