package club.emberwell.report.photo;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.Base64;
import java.util.zip.CRC32;
import javax.imageio.ImageIO;

/** Pictures made for tests, good and bad. */
public final class Pictures {
  private Pictures() {}

  public static byte[] of(int width, int height, String format) throws IOException {
    BufferedImage picture = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
    Graphics2D pen = picture.createGraphics();
    pen.setColor(new Color(0xB8, 0x86, 0x4B));
    pen.fillRect(0, 0, width, height);
    pen.setColor(Color.DARK_GRAY);
    pen.drawLine(0, 0, width, height);
    pen.dispose();
    return encode(picture, format);
  }

  public static byte[] encode(BufferedImage picture, String format) throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    ImageIO.write(picture, format, bytes);
    return bytes.toByteArray();
  }

  /** The smallest lossless WebP of one pixel (from memory, a file in wide use for tests). */
  static byte[] webp() {
    return Base64.getDecoder().decode("UklGRhoAAABXRUJQVlA4TA0AAAAvAAAAEAcQERGIiP4HAA==");
  }

  /**
   * A JPEG as a camera held in that orientation stores it: upright it is 64 wide and 32 high with a
   * red mark at the top left.
   */
  static byte[] markedTopLeft(int orientation) throws IOException {
    boolean swapped = orientation >= 5;
    int w = swapped ? 32 : 64;
    int h = swapped ? 64 : 32;
    // where the upright top left lies in the stored rows and columns
    boolean right = orientation == 2 || orientation == 3 || orientation == 7 || orientation == 8;
    boolean bottom = orientation == 3 || orientation == 4 || orientation == 6 || orientation == 7;
    BufferedImage picture = new BufferedImage(w, h, BufferedImage.TYPE_INT_RGB);
    Graphics2D pen = picture.createGraphics();
    pen.setColor(Color.WHITE);
    pen.fillRect(0, 0, w, h);
    pen.setColor(Color.RED);
    pen.fillRect(right ? w - 16 : 0, bottom ? h - 16 : 0, 16, 16);
    pen.dispose();
    return encode(picture, "jpeg");
  }

  static boolean isRed(int rgb) {
    Color colour = new Color(rgb);
    return colour.getRed() > 180 && colour.getGreen() < 90 && colour.getBlue() < 90;
  }

  /** The JPEG with an EXIF block: this orientation, and a place (48 degrees north). */
  public static byte[] withExif(byte[] jpeg, int orientation) {
    ByteBuffer tiff = ByteBuffer.allocate(128);
    tiff.put("MM\0*".getBytes(StandardCharsets.ISO_8859_1)).putInt(8);
    tiff.putShort((short) 2);
    tiff.putShort((short) 0x0112).putShort((short) 3).putInt(1);
    tiff.putShort((short) orientation).putShort((short) 0);
    tiff.putShort((short) 0x8825).putShort((short) 4).putInt(1).putInt(38);
    tiff.putInt(0);
    tiff.putShort((short) 2);
    tiff.putShort((short) 1).putShort((short) 2).putInt(2).put(new byte[] {'N', 0, 0, 0});
    tiff.putShort((short) 2).putShort((short) 5).putInt(3).putInt(68);
    tiff.putInt(0);
    tiff.putInt(48).putInt(1).putInt(30).putInt(1).putInt(0).putInt(1);
    byte[] block = new byte[tiff.position()];
    tiff.flip().get(block);
    byte[] head = "Exif\0\0".getBytes(StandardCharsets.ISO_8859_1);
    int length = 2 + head.length + block.length;
    ByteBuffer all = ByteBuffer.allocate(jpeg.length + length + 2);
    all.put(jpeg, 0, 2).put((byte) 0xFF).put((byte) 0xE1).putShort((short) length);
    all.put(head).put(block).put(jpeg, 2, jpeg.length - 2);
    return all.array();
  }

  /** A PNG that ends behind a header which promises that many pixels. */
  public static byte[] pngHeader(int width, int height) {
    try {
      ByteArrayOutputStream chunk = new ByteArrayOutputStream();
      DataOutputStream out = new DataOutputStream(chunk);
      out.writeBytes("IHDR");
      out.writeInt(width);
      out.writeInt(height);
      out.write(new byte[] {8, 2, 0, 0, 0});
      CRC32 crc = new CRC32();
      crc.update(chunk.toByteArray());
      ByteArrayOutputStream png = new ByteArrayOutputStream();
      DataOutputStream file = new DataOutputStream(png);
      file.write(new byte[] {(byte) 0x89, 'P', 'N', 'G', '\r', '\n', 0x1A, '\n'});
      file.writeInt(chunk.size() - 4);
      file.write(chunk.toByteArray());
      file.writeInt((int) crc.getValue());
      return png.toByteArray();
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
  }
}
