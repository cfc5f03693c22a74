package club.emberwell.report.photo;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.report.photo.PictureRefused.Fault;
import com.sun.management.ThreadMXBean;
import java.lang.management.ManagementFactory;
import java.time.Duration;
import java.util.Map;
import java.util.concurrent.CancellationException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Small files that once took the server hours, or all of its memory. */
class HostilePictureTest {
  private static final ThreadMXBean THREADS = (ThreadMXBean) ManagementFactory.getThreadMXBean();

  /** A quarter of a heap of 512 MB. */
  private static final long SMALL = 128L << 20;

  private static PictureRefused refused(byte[] upload, PictureStint stint) {
    return assertThrows(PictureRefused.class, () -> PictureCleaner.clean(upload, stint));
  }

  /** With so little time that the test ends soon; without the watch none of them would. */
  private static PictureStint brief() {
    return Stints.with(SMALL, Map.of("processor", "0.3S"));
  }

  private static CleanPicture within(long bytes, byte[] upload) {
    long before = THREADS.getCurrentThreadAllocatedBytes();
    CleanPicture clean = Stints.clean(upload);
    long used = THREADS.getCurrentThreadAllocatedBytes() - before;
    assertTrue(used < bytes, used + " bytes for a file of " + upload.length);
    return clean;
  }

  @Test
  void aJpegOfHundredsOfScansIsRefusedBeforeItIsDecoded() throws Exception {
    PictureRefused refused = refused(HostilePictures.manyScans(300, 300, 456), Stints.any());
    assertEquals(Fault.TOO_COSTLY, refused.fault());
    assertEquals(
        "This JPEG is stored in more than 30 scans. Save it again as an ordinary JPEG.",
        refused.getMessage());
  }

  @Test
  void aProgressiveJpegIsTaken() throws Exception {
    assertEquals(300, Stints.clean(HostilePictures.progressive(300, 200)).width());
  }

  @Test
  void whatTakesTooLongIsStoppedWhileItIsDecoded() throws Exception {
    PictureRefused jpeg = refused(HostilePictures.manyScans(3000, 3000, 29), brief());
    assertEquals(Fault.TOO_COSTLY, jpeg.fault());
    assertTrue(jpeg.getMessage().contains("takes too long"), jpeg.getMessage());
    assertEquals(Fault.TOO_COSTLY, refused(HostilePictures.lossyWebp(4000, 3000), brief()).fault());
  }

  /** RFC 9649, section 4: each transform at most once; the decoder does not insist. */
  @Test
  void aWebpOfThousandsOfTransformsIsStopped() throws Exception {
    byte[] image = HostilePictures.transformedWebp(2000, 2000, 4000);
    assertTrue(image.length < 2000, "it is small");
    assertEquals(Fault.TOO_COSTLY, refused(image, brief()).fault());
    byte[] transparency = HostilePictures.transformedAlpha(1000, 1000, 20_000);
    assertEquals(Fault.TOO_COSTLY, refused(transparency, brief()).fault());
  }

  @Test
  void ofAWebpOfManyImagesOneIsDecoded() throws Exception {
    byte[] once = HostilePictures.repeatedWebp(1000, 1000, 1);
    byte[] often = HostilePictures.repeatedWebp(1000, 1000, 60);
    PictureParts parts = PictureParts.of(PictureFormat.WEBP, often);
    assertTrue(parts.file().length <= once.length, "one image is left");
    assertEquals(1000, Stints.clean(often).width());
  }

  @Test
  void aWebpOfManyCodesIsRefusedBeforeTheyTakeTheHeap() {
    long before = THREADS.getCurrentThreadAllocatedBytes();
    PictureRefused refused = refused(HostilePictures.manyCodes(), Stints.any());
    assertEquals(Fault.TOO_COSTLY, refused.fault());
    assertTrue(refused.getMessage().contains("memory"), refused.getMessage());
    assertTrue(THREADS.getCurrentThreadAllocatedBytes() - before < 80L << 20);
  }

  @ParameterizedTest
  @ValueSource(strings = {"zTXt", "iTXt"})
  void textsOfAPngAreNeverInflated(String type) throws Exception {
    byte[] upload = HostilePictures.swellingText(type, 15, 100);
    assertTrue(upload.length < 2_000_000, "1.5 GB in 1.5 MB");
    assertEquals(30, within(30L << 20, upload).width());
  }

  @Test
  void tagsThatAllMeanTheSameBytesAreNotRead() throws Exception {
    assertEquals(60, within(30L << 20, HostilePictures.manyTags()).width());
  }

  /** 40 million pixels in 70 kB; kept coarsely it fits into the part of a small heap. */
  @Test
  void aLargePictureTakesNoMoreMemoryThanThereIs() throws Exception {
    byte[] upload = HostilePictures.lossyWebp(6324, 6324);
    assertTrue(upload.length < 84_000, "it is small");
    PictureMemory memory = new PictureMemory(SMALL);
    CleanPicture clean =
        PictureCleaner.clean(upload, new PictureStint(Stints.limits(Map.of()), memory));
    assertEquals(1600, clean.width());
    assertTrue(memory.hold(SMALL, Duration.ZERO) != null, "all of it was given back");
  }

  @Test
  void whatCannotBeKeptCoarselyIsRefusedWithWhatFits() {
    PictureRefused refused =
        refused(HostilePictures.losslessWebp(6324, 6324), Stints.with(SMALL, Map.of()));
    assertEquals(Fault.TOO_MANY_PIXELS, refused.fault());
    assertTrue(refused.getMessage().matches("A picture has at most \\d\\d million pixels."));
  }

  @Test
  void aPictureOfOneEndlessRowIsRefused() throws Exception {
    byte[] upload = HostilePictures.oneRow(39_000_000);
    assertEquals(Fault.TOO_MANY_PIXELS, refused(upload, Stints.with(SMALL, Map.of())).fault());
  }

  @Test
  void nothingIsDecodedForWhoHasGone() throws Exception {
    PictureStint stint = Stints.any();
    stint.leave();
    byte[] upload = Pictures.of(60, 40, "jpeg");
    assertThrows(CancellationException.class, () -> PictureCleaner.clean(upload, stint));
  }
}
