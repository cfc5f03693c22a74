package club.emberwell.report.photo;

import club.emberwell.report.ReportLimits;
import club.emberwell.report.photo.PictureRefused.Fault;
import com.twelvemonkeys.imageio.plugins.webp.WebPImageReaderSpi;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.util.concurrent.CancellationException;
import javax.imageio.ImageIO;
import javax.imageio.ImageReadParam;
import javax.imageio.ImageReader;

/**
 * Makes our own JPEGs of an uploaded picture: the sender's bytes are never stored, so neither
 * metadata nor anything hidden behind the picture gets through. What it may take of the server is
 * bounded by {@link PictureParts} before it begins, by {@link PictureNeed} and {@link PictureStint}
 * while it goes on.
 */
final class PictureCleaner {
  private PictureCleaner() {}

  /**
   * @throws PictureRefused where it is none we take
   */
  static CleanPicture clean(byte[] upload, PictureStint stint) {
    if (upload.length > ReportLimits.PHOTO_UPLOAD) {
      throw PictureRefused.tooBig();
    }
    PictureFormat format =
        PictureFormat.of(upload)
            .orElseThrow(
                () ->
                    new PictureRefused(
                        Fault.OTHER_FORMAT, "Please send a JPEG, PNG or WebP picture."));
    stint.begin();
    PictureParts parts = PictureParts.of(format, upload);
    try {
      return read(format, parts, stint);
    } catch (IOException | RuntimeException e) {
      // decoders throw all kinds of things for broken files
      throw meant(e);
    }
  }

  /** What we threw ourselves, perhaps through a decoder that wrapped it. */
  private static RuntimeException meant(Exception e) {
    for (Throwable cause = e; cause != null; cause = cause.getCause()) {
      if (cause instanceof OutOfMemoryError full) {
        throw full;
      }
      if (cause instanceof PictureRefused
          || cause instanceof PicturesBusy
          || cause instanceof CancellationException) {
        return (RuntimeException) cause;
      }
    }
    return PictureRefused.unreadable();
  }

  private static CleanPicture read(PictureFormat format, PictureParts parts, PictureStint stint)
      throws IOException {
    LosslessWebp lossless = parts.lossless();
    if (lossless == null || lossless.alpha()) {
      return decoded(format, parts, stint);
    }
    PictureNeed need = PictureNeed.of(parts, null, stint.mostMemory());
    return stint.within(
        need.bytes(),
        () -> encode(lossless.picture(need.step(), stint), parts.orientation(), stint));
  }

  private static CleanPicture decoded(PictureFormat format, PictureParts parts, PictureStint stint)
      throws IOException {
    ImageReader reader = reader(format);
    try (WatchedPicture in = new WatchedPicture(parts.file(), stint)) {
      reader.setInput(in, true, true);
      WatchedPicture.over(reader, stint);
      PictureNeed need = PictureNeed.of(parts, reader, stint.mostMemory());
      return stint.within(need.bytes(), () -> encode(parts, reader, need.step(), stint));
    } finally {
      reader.dispose();
    }
  }

  private static CleanPicture encode(
      PictureParts parts, ImageReader reader, int step, PictureStint stint) throws IOException {
    ImageReadParam coarse = reader.getDefaultReadParam();
    coarse.setSourceSubsampling(step, step, 0, 0);
    BufferedImage decoded = reader.read(0, coarse);
    if (parts.lossless() != null) {
      parts.lossless().putOnWhite(decoded, step, stint);
    }
    return encode(decoded, parts.orientation(), stint);
  }

  private static CleanPicture encode(BufferedImage decoded, int orientation, PictureStint stint)
      throws IOException {
    stint.check();
    BufferedImage large =
        Pixels.upright(Pixels.within(decoded, PhotoSize.LARGE.side()), orientation);
    stint.check();
    return sizes(large);
  }

  /** A picture of our own, made ready. */
  static CleanPicture drawn(BufferedImage own) throws IOException {
    return sizes(Pixels.within(own, PhotoSize.LARGE.side()));
  }

  private static CleanPicture sizes(BufferedImage large) throws IOException {
    BufferedImage middle = Pixels.within(large, PhotoSize.MIDDLE.side());
    return new CleanPicture(
        large.getWidth(),
        large.getHeight(),
        Pixels.jpeg(large),
        middle.getWidth() < large.getWidth() ? Pixels.jpeg(middle) : null,
        // of the large one, as a page computes its height
        Pixels.jpeg(Pixels.within(large, PhotoSize.THUMB.side())));
  }

  /** One of our own JPEGs made ready once more, as another photo. */
  static CleanPicture again(byte[] large) throws IOException {
    return drawn(Pixels.decoded(large));
  }

  /** The size between of one of our own JPEGs that was kept before there was such a size. */
  static byte[] middle(byte[] large) throws IOException {
    return Pixels.jpeg(Pixels.within(Pixels.decoded(large), PhotoSize.MIDDLE.side()));
  }

  private static ImageReader reader(PictureFormat format) throws IOException {
    return format == PictureFormat.WEBP
        ? new WebPImageReaderSpi().createReaderInstance()
        : ImageIO.getImageReadersByFormatName(format.name()).next();
  }
}
