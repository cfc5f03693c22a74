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
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

class PictureCleanerTest {
  private static final String LURE = "<script>alert(1)</script>";

  private static Fault fault(byte[] upload) {
    return assertThrows(PictureRefused.class, () -> Stints.clean(upload)).fault();
  }

  private static BufferedImage open(byte[] jpeg) throws Exception {
    return ImageIO.read(new ByteArrayInputStream(jpeg));
  }

  @ParameterizedTest
  @ValueSource(strings = {"jpeg", "png"})
  void aPictureIsKeptAsTwoJpegsWithinTheirSizes(String format) throws Exception {
    CleanPicture clean = Stints.clean(Pictures.of(3000, 1500, format));
    assertEquals(1600, clean.width());
    assertEquals(800, clean.height());
    assertEquals(1600, open(clean.picture()).getWidth());
    assertEquals(400, open(clean.thumb()).getWidth());
    assertEquals(PictureFormat.JPEG, PictureFormat.of(clean.picture()).orElseThrow());
  }

  @Test
  void aSmallPictureIsNotBlownUp() throws Exception {
    CleanPicture clean = Stints.clean(Pictures.of(20, 10, "png"));
    assertEquals(20, clean.width());
    assertEquals(20, open(clean.thumb()).getWidth());
  }

  @Test
  void aWebPictureIsRead() throws Exception {
    CleanPicture clean = Stints.clean(Pictures.webp());
    assertEquals(1, clean.width());
    assertEquals(1, clean.height());
  }

  @Test
  void whereItWasTakenIsGone() throws Exception {
    byte[] upload = Pictures.withExif(Pictures.of(60, 40, "jpeg"), 1);
    GpsDirectory before =
        ImageMetadataReader.readMetadata(new ByteArrayInputStream(upload))
            .getFirstDirectoryOfType(GpsDirectory.class);
    assertTrue(before != null && before.getTagCount() > 0, "the test picture has a place");
    CleanPicture clean = Stints.clean(upload);
    for (byte[] kept : new byte[][] {clean.picture(), clean.thumb()}) {
      Metadata metadata = ImageMetadataReader.readMetadata(new ByteArrayInputStream(kept));
      assertEquals(0, metadata.getDirectoriesOfType(GpsDirectory.class).size());
      assertEquals(0, metadata.getDirectoriesOfType(ExifIFD0Directory.class).size());
      assertFalse(new String(kept, StandardCharsets.ISO_8859_1).contains("Exif"));
    }
  }

  /** Orientation values after EXIF 2.3, tag 0x0112 (from memory). */
  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3, 4, 5, 6, 7, 8})
  void aTurnedPictureIsStoodUpright(int orientation) throws Exception {
    byte[] upload = Pictures.withExif(Pictures.markedTopLeft(orientation), orientation);
    CleanPicture clean = Stints.clean(upload);
    assertEquals(64, clean.width());
    assertEquals(32, clean.height());
    BufferedImage upright = open(clean.picture());
    assertTrue(Pictures.isRed(upright.getRGB(6, 6)), "the mark is at the top left again");
    assertFalse(Pictures.isRed(upright.getRGB(58, 26)));
  }

  @Test
  void whatIsHiddenBehindThePictureDoesNotGetThrough() throws Exception {
    byte[] picture = Pictures.of(40, 40, "jpeg");
    byte[] lure = LURE.getBytes(StandardCharsets.ISO_8859_1);
    byte[] upload = Arrays.copyOf(picture, picture.length + lure.length);
    System.arraycopy(lure, 0, upload, picture.length, lure.length);
    CleanPicture clean = Stints.clean(upload);
    assertFalse(new String(clean.picture(), StandardCharsets.ISO_8859_1).contains("script"));
  }

  @Test
  void aHugeHeaderIsRefusedBeforeAnythingIsDecoded() {
    assertEquals(Fault.TOO_MANY_PIXELS, fault(Pictures.pngHeader(65_535, 65_535)));
  }

  @ParameterizedTest
  @ValueSource(strings = {"jpeg", "png"})
  void aCutOffPictureIsRefused(String format) throws Exception {
    byte[] whole = Pictures.of(200, 200, format);
    assertEquals(Fault.UNREADABLE, fault(Arrays.copyOf(whole, whole.length / 2)));
  }

  @Test
  void otherFormatsAreRefusedWhateverTheyAreCalled() {
    for (String text : new String[] {"<svg xmlns='http://www.w3.org/2000/svg'/>", "GIF89a", ""}) {
      assertEquals(Fault.OTHER_FORMAT, fault(text.getBytes(StandardCharsets.UTF_8)));
    }
  }

  @Test
  void aFileAboveTheLimitIsRefusedUnread() {
    assertEquals(Fault.TOO_BIG, fault(new byte[ReportLimits.PHOTO_UPLOAD + 1]));
  }

  @ParameterizedTest
  @EnumSource(PictureFormat.class)
  void aStartWithNothingBehindItIsRefused(PictureFormat format) {
    byte[] start =
        switch (format) {
          case JPEG -> new byte[] {(byte) 0xFF, (byte) 0xD8, (byte) 0xFF, (byte) 0xD9};
          case PNG -> Arrays.copyOf(Pictures.pngHeader(1, 1), 8);
          case WEBP -> "RIFF____WEBP".getBytes(StandardCharsets.ISO_8859_1);
        };
    assertEquals(Fault.UNREADABLE, fault(start));
  }
}
