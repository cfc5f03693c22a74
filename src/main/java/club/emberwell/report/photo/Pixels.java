package club.emberwell.report.photo;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.AffineTransform;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.stream.MemoryCacheImageOutputStream;

/** Turns, shrinks and encodes pictures. */
public final class Pixels {
  private static final float JPEG_QUALITY = 0.85f;

  private Pixels() {}

  /** No side longer than this; opaque, what was transparent is white. */
  static BufferedImage within(BufferedImage picture, int side) {
    Photo.Size to = new Photo.Size(picture.getWidth(), picture.getHeight()).within(side);
    BufferedImage now = picture;
    int longer = Math.max(now.getWidth(), now.getHeight());
    // by halves first: one big step would skip pixels
    while (longer > 2 * side) {
      now = drawn(now, (now.getWidth() + 1) / 2, (now.getHeight() + 1) / 2);
      longer = Math.max(now.getWidth(), now.getHeight());
    }
    return drawn(now, to.width(), to.height());
  }

  private static BufferedImage drawn(BufferedImage from, int width, int height) {
    BufferedImage to = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
    Graphics2D pen = to.createGraphics();
    pen.setRenderingHint(
        RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BILINEAR);
    pen.drawImage(from, 0, 0, width, height, Color.WHITE, null);
    pen.dispose();
    return to;
  }

  /**
   * Turned and mirrored as EXIF says.
   *
   * @param orientation 1 to 8 after EXIF 2.3, tag 0x0112; anything else counts as 1
   */
  static BufferedImage upright(BufferedImage from, int orientation) {
    int w = from.getWidth();
    int h = from.getHeight();
    AffineTransform turn =
        switch (orientation) {
          case 2 -> new AffineTransform(-1, 0, 0, 1, w, 0);
          case 3 -> new AffineTransform(-1, 0, 0, -1, w, h);
          case 4 -> new AffineTransform(1, 0, 0, -1, 0, h);
          case 5 -> new AffineTransform(0, 1, 1, 0, 0, 0);
          case 6 -> new AffineTransform(0, 1, -1, 0, h, 0);
          case 7 -> new AffineTransform(0, -1, -1, 0, h, w);
          case 8 -> new AffineTransform(0, -1, 1, 0, 0, w);
          default -> null;
        };
    if (turn == null) {
      return from;
    }
    boolean swapped = orientation >= 5;
    BufferedImage to =
        new BufferedImage(swapped ? h : w, swapped ? w : h, BufferedImage.TYPE_INT_RGB);
    Graphics2D pen = to.createGraphics();
    pen.drawImage(from, turn, null);
    pen.dispose();
    return to;
  }

  /** One of our own JPEGs, whose size is bounded; never what somebody else sent. */
  public static BufferedImage decoded(byte[] ours) {
    try {
      return ImageIO.read(new ByteArrayInputStream(ours));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  public static byte[] jpeg(BufferedImage picture) throws IOException {
    ImageWriter writer = ImageIO.getImageWritersByFormatName("jpeg").next();
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (MemoryCacheImageOutputStream out = new MemoryCacheImageOutputStream(bytes)) {
      ImageWriteParam param = writer.getDefaultWriteParam();
      param.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
      param.setCompressionQuality(JPEG_QUALITY);
      writer.setOutput(out);
      writer.write(null, new IIOImage(picture, null, null), param);
    } finally {
      writer.dispose();
    }
    return bytes.toByteArray();
  }
}
