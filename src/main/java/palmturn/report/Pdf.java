package palmturn.report;

import com.openhtmltopdf.extend.FSObjectDrawer;
import com.openhtmltopdf.extend.OutputDevice;
import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FontStyle;
import com.openhtmltopdf.pdfboxout.PDFontSupplier;
import com.openhtmltopdf.pdfboxout.PdfBoxRenderer;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import com.openhtmltopdf.render.DefaultObjectDrawerFactory;
import com.openhtmltopdf.util.XRLog;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Calendar;
import java.util.GregorianCalendar;
import java.util.List;
import java.util.Locale;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentInformation;
import org.apache.pdfbox.pdmodel.font.PDType0Font;
import palmturn.chart.Lato;
import palmturn.chart.Palette;

/**
 * Lays the report's page out on paper. Charts stand in the markup as objects, which their own
 * painters draw as vectors; the file is tagged for screen readers.
 */
final class Pdf implements Chart.Markup {
  /** A chart as wide as the page on screen is as wide as the column on paper. */
  private static final double SCALE = 680.0 / 720;

  private static final String TYPE = "application/x-palmturn-chart";
  private static final String PRODUCER = "Palmturn";
  private static final int BOLD = 700;

  private final List<Chart> charts = new ArrayList<>();

  @Override
  public String of(Chart chart) {
    charts.add(chart);
    return String.format(
        Locale.ROOT,
        "<object type=\"%s\" class=\"%s\" data-chart=\"%d\" alt=\"%s\" style=\"width:%dpx;height:%dpx\"></object>",
        TYPE,
        chart.decorative() ? "icon" : "drawn",
        charts.size() - 1,
        escaped(chart.title()),
        pixels(chart.width()),
        pixels(chart.height()));
  }

  /** Returns how many pages a page takes whose charts were all put into the markup by this. */
  int pages(String xhtml) {
    try (PDDocument document = new PDDocument();
        PdfBoxRenderer renderer =
            builder(document, xhtml).toStream(OutputStream.nullOutputStream()).buildPdfRenderer()) {
      renderer.layout();
      return renderer.getRootBox().getLayer().getPages().size();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Returns the PDF of a page whose charts were all put into the markup by this. */
  byte[] of(String xhtml, String title, Instant madeAt) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try (PDDocument document = new PDDocument()) {
      PdfRendererBuilder builder = builder(document, xhtml);
      builder.toStream(out);
      try (PdfBoxRenderer renderer = builder.buildPdfRenderer()) {
        renderer.createPDFWithoutClosing();
        Calendar made = GregorianCalendar.from(madeAt.atZone(ZoneOffset.UTC));
        PDDocumentInformation information = document.getDocumentInformation();
        information.setTitle(title);
        information.setCreator(PRODUCER);
        information.setCreationDate(made);
        information.setModificationDate(made);
        document.setDocumentId(madeAt.toEpochMilli());
        document.save(out);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return out.toByteArray();
  }

  private PdfRendererBuilder builder(PDDocument document, String xhtml) throws IOException {
    XRLog.setLoggingEnabled(false);
    DefaultObjectDrawerFactory drawers = new DefaultObjectDrawerFactory();
    drawers.registerDrawer(TYPE, drawer());
    return new PdfRendererBuilder()
        .usePDDocument(document)
        .withHtmlContent(xhtml, null)
        .useObjectDrawerFactory(drawers)
        .useReplacementText("□")
        .usePdfUaAccessibility(true)
        .usePdfVersion(1.7f)
        .withProducer(PRODUCER)
        .useFont(font(document, "Lato-Regular.ttf"), Lato.FAMILY)
        .useFont(font(document, "Lato-Bold.ttf"), Lato.FAMILY, BOLD, FontStyle.NORMAL, true);
  }

  /** Ligatures are left out: whoever searches the text for "after" must find it. */
  private static PDFontSupplier font(PDDocument document, String file) throws IOException {
    TrueTypeFont font = new TTFParser().parse(new RandomAccessReadBuffer(Lato.bytes(file)));
    font.setEnableGsub(false);
    return new PDFontSupplier(PDType0Font.load(document, font, true));
  }

  private FSObjectDrawer drawer() {
    return (element, x, y, width, height, device, context, dotsPerPixel) -> {
      Chart chart = charts.get(Integer.parseInt(element.getAttribute("data-chart")));
      draw(chart, (float) x, (float) y, device);
      return null;
    };
  }

  private static void draw(Chart chart, float x, float y, OutputDevice device) {
    device.drawWithGraphics(
        x,
        y,
        pixels(chart.width()),
        pixels(chart.height()),
        g -> {
          g.scale(pixels(chart.width()) / chart.width(), pixels(chart.height()) / chart.height());
          chart.painter().paint(g, Palette.PRINT);
        });
  }

  private static int pixels(double length) {
    return (int) Math.ceil(length * SCALE);
  }

  private static String escaped(String text) {
    return text.replace("&", "&amp;")
        .replace("<", "&lt;")
        .replace(">", "&gt;")
        .replace("\"", "&quot;");
  }
}
