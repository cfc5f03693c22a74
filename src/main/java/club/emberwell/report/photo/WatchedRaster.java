package club.emberwell.report.photo;

import java.awt.Point;
import java.awt.image.DataBuffer;
import java.awt.image.DataBufferByte;
import java.awt.image.PixelInterleavedSampleModel;
import java.awt.image.WritableRaster;

/**
 * Pixels of four bytes each that ask on the way whether to go on: the decoder of lossless WebP goes
 * over all of them as often as a file asks for, and neither reads nor tells of its progress
 * meanwhile.
 */
final class WatchedRaster extends WritableRaster {
  static final int BANDS = 4;
  private static final int CALLS = 1 << 14;

  private final byte[] pixels;
  private final int row;
  private final PictureStint stint;
  private int calls;

  WatchedRaster(int width, int height, PictureStint stint) {
    this(new byte[Math.multiplyExact(BANDS, width * height)], BANDS * width, width, height, stint);
  }

  private WatchedRaster(byte[] pixels, int row, int width, int height, PictureStint stint) {
    super(
        new PixelInterleavedSampleModel(
            DataBuffer.TYPE_BYTE, width, height, BANDS, row, new int[] {0, 1, 2, 3}),
        new DataBufferByte(pixels, pixels.length),
        new Point());
    this.pixels = pixels;
    this.row = row;
    this.stint = stint;
  }

  /** One byte of a pixel. */
  int band(int x, int y, int band) {
    return pixels[y * row + x * BANDS + band] & 0xFF;
  }

  @Override
  public Object getDataElements(int x, int y, Object into) {
    watch();
    byte[] pixel = into == null ? new byte[BANDS] : (byte[]) into;
    System.arraycopy(pixels, y * row + x * BANDS, pixel, 0, BANDS);
    return pixel;
  }

  @Override
  public void setDataElements(int x, int y, Object from) {
    watch();
    System.arraycopy(from, 0, pixels, y * row + x * BANDS, BANDS);
  }

  @Override
  public int getSample(int x, int y, int band) {
    watch();
    return band(x, y, band);
  }

  /** A narrower or lower part from the top left on, the only one decoders ask for. */
  @Override
  public WritableRaster createWritableChild(
      int x, int y, int width, int height, int minX, int minY, int[] bands) {
    return x == 0 && y == 0 && minX == 0 && minY == 0 && bands == null
        ? new WatchedRaster(pixels, row, width, height, stint)
        : super.createWritableChild(x, y, width, height, minX, minY, bands);
  }

  private void watch() {
    if (calls++ % CALLS == 0) {
      stint.check();
    }
  }
}
