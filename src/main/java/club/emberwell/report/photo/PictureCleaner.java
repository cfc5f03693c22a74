package club.emberwell.report.photo;

import club.emberwell.report.ReportLimits;
import club.emberwell.report.photo.PictureRefused.Fault;
import com.drew.imaging.ImageMetadataReader;
import com.drew.imaging.ImageProcessingException;
import com.drew.metadata.MetadataException;
import com.drew.metadata.exif.ExifIFD0Directory;
import com.twelvemonkeys.imageio.plugins.webp.WebPImageReaderSpi;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Iterator;
import java.util.concurrent.Semaphore;
import javax.imageio.ImageIO;
import javax.imageio.ImageReadParam;
import javax.imageio.ImageReader;
import javax.imageio.stream.MemoryCacheImageInputStream;

/**
 * Makes our own JPEGs of an uploaded picture: the sender's bytes are never stored, so neither
 * metadata nor anything hidden behind the picture gets through. Memory is bounded by the pixel cap,
 * by decoding large pictures coarsely, and by decoding two at a time, large ones alone.
 */
final class PictureCleaner {
  private static final int TURNS = 2;
  private static final long LARGE = 12_000_000;
  private static final Semaphore AT_ONCE = new Semaphore(TURNS, true);

  private PictureCleaner() {}

  /**
   * @throws PictureRefused where it is none we take
   */
  static CleanPicture clean(byte[] upload) {
    if (upload.length > ReportLimits.PHOTO_UPLOAD) {
      throw PictureRefused.tooBig();
    }
    PictureFormat format =
        PictureFormat.of(upload)
            .orElseThrow(
                () ->
                    new PictureRefused(
                        Fault.OTHER_FORMAT, "Please send a JPEG, PNG or WebP picture."));
    if (!format.isWhole(upload)) {
      throw unreadable();
    }
    try {
      return inTurn(format, upload);
    } catch (IOException | RuntimeException e) {
      // decoders throw all kinds of things for broken files
      throw e instanceof PictureRefused refused ? refused : unreadable();
    }
  }

  private static CleanPicture inTurn(PictureFormat format, byte[] upload) throws IOException {
    ImageReader reader = reader(format);
    try (MemoryCacheImageInputStream in =
        new MemoryCacheImageInputStream(new ByteArrayInputStream(upload))) {
      reader.setInput(in, true, true);
      int turns = pixels(reader) > LARGE ? TURNS : 1;
      AT_ONCE.acquireUninterruptibly(turns);
      try {
        return encode(decode(reader), orientation(upload));
      } finally {
        AT_ONCE.release(turns);
      }
    } finally {
      reader.dispose();
    }
  }

  private static CleanPicture encode(BufferedImage decoded, int orientation) throws IOException {
    BufferedImage large =
        Pixels.upright(Pixels.within(decoded, PhotoSize.LARGE.side()), orientation);
    return sizes(large, Pixels.jpeg(large));
  }

  /** A picture of our own, made ready. */
  static CleanPicture drawn(BufferedImage own) throws IOException {
    return encode(own, 1);
  }

  private static CleanPicture sizes(BufferedImage large, byte[] jpeg) throws IOException {
    BufferedImage middle = Pixels.within(large, PhotoSize.MIDDLE.side());
    return new CleanPicture(
        large.getWidth(),
        large.getHeight(),
        jpeg,
        middle.getWidth() < large.getWidth() ? Pixels.jpeg(middle) : null,
        // of the large one, as a page computes its height
        Pixels.jpeg(Pixels.within(large, PhotoSize.THUMB.side())));
  }

  /** The size between of one of our own JPEGs that was kept before there was such a size. */
  static byte[] middle(byte[] large) {
    AT_ONCE.acquireUninterruptibly();
    try {
      return Pixels.jpeg(Pixels.within(Pixels.decoded(large), PhotoSize.MIDDLE.side()));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } finally {
      AT_ONCE.release();
    }
  }

  private static PictureRefused unreadable() {
    return new PictureRefused(Fault.UNREADABLE, "This picture is damaged.");
  }

  /** Read from the header alone. */
  private static long pixels(ImageReader reader) throws IOException {
    long pixels = (long) reader.getWidth(0) * reader.getHeight(0);
    if (pixels > ReportLimits.PHOTO_PIXELS) {
      throw new PictureRefused(
          Fault.TOO_MANY_PIXELS,
          "A picture has at most " + ReportLimits.PHOTO_PIXELS / 1_000_000 + " million pixels.");
    }
    return pixels;
  }

  private static BufferedImage decode(ImageReader reader) throws IOException {
    ImageReadParam coarse = reader.getDefaultReadParam();
    int longer = Math.max(reader.getWidth(0), reader.getHeight(0));
    int step = Math.max(1, longer / (2 * ReportLimits.PHOTO_SIDE));
    coarse.setSourceSubsampling(step, step, 0, 0);
    return reader.read(0, coarse);
  }

  private static ImageReader reader(PictureFormat format) throws IOException {
    if (format == PictureFormat.WEBP) {
      return new WebPImageReaderSpi().createReaderInstance();
    }
    Iterator<ImageReader> readers = ImageIO.getImageReadersByFormatName(format.name());
    return readers.next();
  }

  /** The EXIF orientation, 1 to 8; 1 where there is none. */
  private static int orientation(byte[] upload) {
    try {
      ExifIFD0Directory exif =
          ImageMetadataReader.readMetadata(new ByteArrayInputStream(upload))
              .getFirstDirectoryOfType(ExifIFD0Directory.class);
      return exif == null || !exif.containsTag(ExifIFD0Directory.TAG_ORIENTATION)
          ? 1
          : exif.getInt(ExifIFD0Directory.TAG_ORIENTATION);
    } catch (ImageProcessingException | MetadataException | IOException e) {
      return 1;
    }
  }
}
