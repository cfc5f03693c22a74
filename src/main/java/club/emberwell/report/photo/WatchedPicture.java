package club.emberwell.report.photo;

import com.twelvemonkeys.imageio.util.ProgressListenerBase;
import javax.imageio.ImageReader;
import javax.imageio.stream.ImageInputStreamImpl;

/**
 * The bytes of a picture for a decoder, who asks on the way whether to go on: as it reads, and as
 * it tells of its progress. Holds no copy of them, unlike the cached streams of the JDK.
 */
final class WatchedPicture extends ImageInputStreamImpl {
  /** Some decoders read byte by byte, and asking for the time costs more than a byte. */
  private static final int READS = 2048;

  private final byte[] bytes;
  private final PictureStint stint;
  private int reads;

  WatchedPicture(byte[] bytes, PictureStint stint) {
    this.bytes = bytes;
    this.stint = stint;
  }

  /** Watches a decoder that works for a while without reading. */
  static void over(ImageReader reader, PictureStint stint) {
    reader.addIIOReadProgressListener(
        new ProgressListenerBase() {
          @Override
          public void imageProgress(ImageReader source, float percent) {
            stint.check();
          }
        });
  }

  @Override
  public long length() {
    return bytes.length;
  }

  @Override
  public int read() {
    watch();
    bitOffset = 0;
    return streamPos < bytes.length ? bytes[(int) streamPos++] & 0xFF : -1;
  }

  @Override
  public int read(byte[] into, int offset, int length) {
    watch();
    bitOffset = 0;
    int there = (int) Math.min(length, bytes.length - streamPos);
    if (there <= 0) {
      return length == 0 ? 0 : -1;
    }
    System.arraycopy(bytes, (int) streamPos, into, offset, there);
    streamPos += there;
    return there;
  }

  private void watch() {
    if (reads++ % READS == 0) {
      stint.check();
    }
  }
}
