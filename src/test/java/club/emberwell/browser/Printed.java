package club.emberwell.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.zxing.BinaryBitmap;
import com.google.zxing.DecodeHintType;
import com.google.zxing.NotFoundException;
import com.google.zxing.RGBLuminanceSource;
import com.google.zxing.common.HybridBinarizer;
import com.google.zxing.qrcode.QRCodeReader;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.Margin;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.util.Collection;
import java.util.Map;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;

/**
 * A page as Chromium prints it, read by PDFBox: how many sheets, and what stands on them.
 *
 * @param text without any space: a column breaks lines where it likes
 * @param smallest letters, pt
 */
record Printed(String format, int sheets, String text, float smallest, byte[] pdf) {
  /** What a browser's print dialog leaves round a page by itself. */
  private static final Margin USUAL =
      new Margin().setTop("1cm").setRight("1cm").setBottom("1cm").setLeft("1cm");

  /** Points; small print of a newspaper. */
  private static final float LEGIBLE = 7;

  /** A phone's camera held over a sheet sees more. */
  private static final float DPI = 200;

  static Printed of(Page page, String format) throws IOException {
    byte[] pdf = page.pdf(new Page.PdfOptions().setFormat(format).setMargin(USUAL));
    try (PDDocument document = Loader.loadPDF(pdf)) {
      Letters letters = new Letters();
      String text = letters.getText(document);
      return new Printed(format, document.getNumberOfPages(), bare(text), letters.smallest, pdf);
    }
  }

  /** A browser makes all smaller where something is too wide. */
  private static final class Letters extends PDFTextStripper {
    private float smallest = Float.MAX_VALUE;

    @Override
    protected void processTextPosition(TextPosition letter) {
      smallest = Math.min(smallest, letter.getFontSizeInPt());
      super.processTextPosition(letter);
    }
  }

  private static String bare(String text) {
    return text.replaceAll("\\s+", "");
  }

  Printed on(int expected) {
    assertEquals(expected, sheets, () -> "sheets of " + format + ": " + text);
    return this;
  }

  /** To be read at arm's length beside a machine. */
  Printed isLegible() {
    assertTrue(smallest >= LEGIBLE, () -> "letters of " + smallest + " pt");
    return this;
  }

  Printed says(Collection<String> parts) {
    parts.forEach(part -> assertTrue(text.contains(bare(part)), () -> part + " in " + text));
    return this;
  }

  Printed hasNone(Collection<String> parts) {
    parts.forEach(part -> assertFalse(text.contains(bare(part)), () -> part + " in " + text));
    return this;
  }

  /** What a phone reads in the square on the first sheet. */
  String square() throws Exception {
    BufferedImage sheet;
    try (PDDocument document = Loader.loadPDF(pdf)) {
      sheet = new PDFRenderer(document).renderImageWithDPI(0, DPI);
    }
    int[] pixels =
        sheet.getRGB(0, 0, sheet.getWidth(), sheet.getHeight(), null, 0, sheet.getWidth());
    RGBLuminanceSource seen = new RGBLuminanceSource(sheet.getWidth(), sheet.getHeight(), pixels);
    try {
      return new QRCodeReader()
          .decode(
              new BinaryBitmap(new HybridBinarizer(seen)),
              Map.of(DecodeHintType.TRY_HARDER, Boolean.TRUE))
          .getText();
    } catch (NotFoundException e) {
      throw new AssertionError("no square on the sheet", e);
    }
  }
}
