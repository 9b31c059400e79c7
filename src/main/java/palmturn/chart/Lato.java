package palmturn.chart;

import java.awt.Font;
import java.awt.FontFormatException;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;

/** The bundled typeface as AWT fonts, needing no font on the computer and no display. */
public final class Lato {
  /** The family's name, in style sheets too. */
  public static final String FAMILY = "Lato";

  /** Resource folder of the fonts: TTF for drawing, WOFF2 for HTML. */
  public static final String FOLDER = "/palmturn/fonts/";

  private static final Font REGULAR = load("Lato-Regular.ttf");
  private static final Font BOLD = load("Lato-Bold.ttf").deriveFont(Font.BOLD);

  private Lato() {}

  /** Returns the regular weight at a size in pixels. */
  public static Font regular(double px) {
    return REGULAR.deriveFont((float) px);
  }

  /** Returns the bold weight at a size in pixels. */
  public static Font bold(double px) {
    return BOLD.deriveFont((float) px);
  }

  /** Returns the bytes of a bundled font file. */
  public static byte[] bytes(String file) {
    try (InputStream in = open(file)) {
      return in.readAllBytes();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static Font load(String file) {
    try (InputStream in = open(file)) {
      return Font.createFont(Font.TRUETYPE_FONT, in);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (FontFormatException e) {
      throw new IllegalStateException("the bundled font " + file + " can't be read", e);
    }
  }

  private static InputStream open(String file) {
    InputStream in = Lato.class.getResourceAsStream(FOLDER + file);
    if (in == null) {
      throw new IllegalStateException("the program's font " + file + " is missing from its jar");
    }
    return in;
  }
}
