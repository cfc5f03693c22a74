package club.emberwell.report.photo;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.report.ReportLimits;
import club.emberwell.report.photo.PictureRefused.Fault;
import com.drew.imaging.ImageMetadataReader;
import com.drew.metadata.Metadata;
import com.drew.metadata.exif.ExifIFD0Directory;
import com.drew.metadata.exif.GpsDirectory;
import com.sun.management.ThreadMXBean;
import java.awt.Color;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.lang.management.ManagementFactory;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * WebP pictures made by the format's own reference tools (libwebp); {@code report/webp/make.sh}
 * says how. The layout of the headers: RFC 9649, section 2.
 */
class WebPictureTest {
  private static final Color RED = new Color(210, 40, 40);
  private static final Color GREEN = new Color(40, 160, 60);
  private static final Color BLUE = new Color(40, 70, 200);
  private static final Color GREY = new Color(128, 128, 128);

  /** Two lossy encodings and a weave of plus or minus four. */
  private static final int NEAR = 24;

  private static byte[] file(String name) throws IOException {
    try (InputStream in =
        WebPictureTest.class.getResourceAsStream("/report/webp/" + name + ".webp")) {
      return in.readAllBytes();
    }
  }

  private static BufferedImage open(byte[] jpeg) throws IOException {
    assertEquals(PictureFormat.JPEG, PictureFormat.of(jpeg).orElseThrow());
    return ImageIO.read(new ByteArrayInputStream(jpeg));
  }

  private static void assertNear(Color expected, BufferedImage picture, double x, double y) {
    Color seen =
        new Color(picture.getRGB((int) (x * picture.getWidth()), (int) (y * picture.getHeight())));
    int off =
        Math.max(
            Math.abs(expected.getRed() - seen.getRed()),
            Math.max(
                Math.abs(expected.getGreen() - seen.getGreen()),
                Math.abs(expected.getBlue() - seen.getBlue())));
    assertTrue(off <= NEAR, "at " + x + ", " + y + ": " + seen + " for " + expected);
  }

  private static void assertQuarters(
      byte[] jpeg, Color topLeft, Color topRight, Color bottomLeft, Color bottomRight)
      throws IOException {
    BufferedImage picture = open(jpeg);
    for (double near : new double[] {0.05, 0.25, 0.45}) {
      assertNear(topLeft, picture, near, near);
      assertNear(topRight, picture, 1 - near, near);
      assertNear(bottomLeft, picture, near, 1 - near);
      assertNear(bottomRight, picture, 1 - near, 1 - near);
    }
  }

  @ParameterizedTest
  @CsvSource({
    "lossy, 480, 320, 400, 267",
    "lossless, 240, 160, 240, 160",
    "large, 1600, 582, 400, 146"
  })
  void lossyAndLosslessPicturesKeepTheirColoursAndFitTheirSizes(
      String name, int width, int height, int thumbWidth, int thumbHeight) throws IOException {
    CleanPicture clean = Stints.clean(file(name));
    assertEquals(width, clean.width());
    assertEquals(height, clean.height());
    assertEquals(width, open(clean.picture()).getWidth());
    assertEquals(height, open(clean.picture()).getHeight());
    assertEquals(thumbWidth, open(clean.thumb()).getWidth());
    assertEquals(thumbHeight, open(clean.thumb()).getHeight());
    assertQuarters(clean.picture(), RED, GREEN, BLUE, GREY);
    assertQuarters(clean.thumb(), RED, GREEN, BLUE, GREY);
  }

  @Test
  void shadesComeOutAsTheyWere() throws IOException {
    BufferedImage picture = open(Stints.clean(file("shades")).picture());
    for (int x = 5; x < 120; x += 10) {
      for (int y = 5; y < 80; y += 10) {
        assertNear(new Color(2 * x, 3 * y, x + y), picture, x / 120.0, y / 80.0);
      }
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"alpha-lossy", "alpha-lossless"})
  void whatIsTransparentBecomesWhite(String name) throws IOException {
    CleanPicture clean = Stints.clean(file(name));
    assertEquals(240, clean.width());
    assertQuarters(clean.picture(), RED, Color.WHITE, BLUE, Color.WHITE);
  }

  @Test
  void whoTookItAndWhereIsGoneAndItStandsUpright() throws Exception {
    byte[] upload = file("metadata");
    Metadata before = ImageMetadataReader.readMetadata(new ByteArrayInputStream(upload));
    assertTrue(before.getFirstDirectoryOfType(GpsDirectory.class).getTagCount() > 0);
    assertTrue(text(upload).contains("behind the mill"));
    CleanPicture clean = Stints.clean(upload);
    // orientation 6: what is stored on the left is the upright top
    assertEquals(320, clean.width());
    assertEquals(480, clean.height());
    assertQuarters(clean.picture(), BLUE, RED, GREY, GREEN);
    for (byte[] kept : new byte[][] {clean.picture(), clean.thumb()}) {
      Metadata after = ImageMetadataReader.readMetadata(new ByteArrayInputStream(kept));
      assertEquals(0, after.getDirectoriesOfType(GpsDirectory.class).size());
      assertEquals(0, after.getDirectoriesOfType(ExifIFD0Directory.class).size());
      for (String trace : new String[] {"behind the mill", "Exif", "xmp", "GPS"}) {
        assertFalse(text(kept).contains(trace), trace);
      }
    }
  }

  private static String text(byte[] bytes) {
    return new String(bytes, StandardCharsets.ISO_8859_1);
  }

  @Test
  void ofAMovingPictureTheFirstIsKept() throws IOException {
    assertQuarters(Stints.clean(file("animated")).picture(), RED, GREEN, BLUE, GREY);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "lossy",
        "lossless",
        "large",
        "shades",
        "alpha-lossy",
        "alpha-lossless",
        "metadata",
        "animated"
      })
  void aCutOffPictureIsRefusedWhereverItIsCut(String name) throws IOException {
    byte[] whole = file(name);
    int step = Math.max(1, whole.length / 20);
    for (int length = 12; length < whole.length; length += step) {
      byte[] cut = Arrays.copyOf(whole, length);
      String at = name + " cut at " + length;
      assertEquals(Fault.UNREADABLE, fault(cut, at), at);
    }
  }

  private static Fault fault(byte[] upload, String what) {
    return assertThrows(PictureRefused.class, () -> Stints.clean(upload), what).fault();
  }

  @Test
  void aHugeCanvasIsRefusedBeforeAnythingIsDecoded() throws IOException {
    byte[] simple = file("lossy");
    sides(simple, 26, 16_383, 16_383);
    assertEquals(Fault.TOO_MANY_PIXELS, fault(simple, "lossy"));

    byte[] lossless = file("lossless");
    ByteBuffer.wrap(lossless).order(ByteOrder.LITTLE_ENDIAN).putInt(21, 16_382 << 14 | 16_382);
    assertEquals(Fault.TOO_MANY_PIXELS, fault(lossless, "lossless"));

    byte[] extended = file("metadata");
    for (int i = 24; i < 30; i++) {
      extended[i] = (byte) 0xFF;
    }
    assertEquals(Fault.TOO_MANY_PIXELS, fault(extended, "extended"));
  }

  /** The canvas is small and says nothing of the picture on it. */
  @Test
  void aHugePictureOnASmallCanvasIsRefused() throws IOException {
    byte[] extended = file("metadata");
    sides(extended, 44, 16_383, 16_383);
    ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
    long before = threads.getCurrentThreadAllocatedBytes();
    Fault fault = fault(extended, "frame");
    long used = threads.getCurrentThreadAllocatedBytes() - before;
    assertTrue(used < 4L * ReportLimits.PHOTO_PIXELS, used + " bytes for a small file");
  }

  /** Width and height as a lossy frame has them: 14 bits each. */
  private static void sides(byte[] file, int at, int width, int height) {
    ByteBuffer.wrap(file)
        .order(ByteOrder.LITTLE_ENDIAN)
        .putShort(at, (short) width)
        .putShort(at + 2, (short) height);
  }
}
