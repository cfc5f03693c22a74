package club.emberwell.report.photo;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.lang.reflect.Field;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import java.util.zip.CRC32;
import java.util.zip.Deflater;
import java.util.zip.DeflaterOutputStream;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.stream.MemoryCacheImageOutputStream;

/** Small files that cost their reader much: each breaks no rule of its format. */
public final class HostilePictures {
  private HostilePictures() {}

  /**
   * A lossy WebP (RFC 6386, sections 9, 11 and 19; RFC 9649, section 2.5) in which no block says
   * anything but that it is like its neighbours: 84 kB for 40 million pixels.
   */
  public static byte[] lossyWebp(int width, int height) {
    return riff(chunk("VP8 ", lossyFrame(width, height)));
  }

  private static byte[] lossyFrame(int width, int height) {
    BoolEncoder code = new BoolEncoder();
    // colours, clamping, segments, filter and its levels, deltas, partitions, seven quantizers
    code.literal(0, 2 + 1 + 1 + 6 + 3 + 1 + 2);
    code.literal(0, 7 + 5);
    code.literal(0, 1);
    for (int chance : updates()) {
      code.bit(chance, false);
    }
    code.literal(1, 1);
    code.literal(1, 8);
    for (int block = (width + 15) / 16 * ((height + 15) / 16); block > 0; block--) {
      code.bit(1, true);
      // DC prediction of brightness and of colour
      code.bit(145, true);
      code.bit(156, false);
      code.bit(163, false);
      code.bit(142, false);
    }
    byte[] first = code.bytes();
    ByteBuffer frame = ByteBuffer.allocate(10 + first.length + 64).order(ByteOrder.LITTLE_ENDIAN);
    // a key frame that is shown, with the length of its first partition
    int tag = 1 << 4 | first.length << 5;
    frame.put((byte) tag).put((byte) (tag >> 8)).put((byte) (tag >> 16));
    frame.put((byte) 0x9D).put((byte) 0x01).put((byte) 0x2A);
    frame.putShort((short) width).putShort((short) height).put(first);
    return frame.array();
  }

  /** The 1056 chances of RFC 6386, section 13.4, as the decoder has them. */
  private static int[] updates() {
    try {
      Field table =
          Class.forName("com.twelvemonkeys.imageio.plugins.webp.vp8.Globals")
              .getDeclaredField("vp8CoefUpdateProbs");
      table.setAccessible(true);
      return Stream.of((int[][][][]) table.get(null))
          .flatMap(Stream::of)
          .flatMap(Stream::of)
          .flatMapToInt(IntStream::of)
          .toArray();
    } catch (ReflectiveOperationException e) {
      throw new IllegalStateException(e);
    }
  }

  /** A lossless WebP (RFC 9649, section 3) of one colour: five codes of one symbol, no pixels. */
  public static byte[] losslessWebp(int width, int height) {
    return transformedWebp(width, height, 0);
  }

  /** The same with a transform (section 4) so many times, of which each goes over all pixels. */
  public static byte[] transformedWebp(int width, int height, int times) {
    Bits bits = losslessHead(width, height);
    subtractGreen(bits, times);
    return riff(chunk("VP8L", oneColour(bits)));
  }

  /** A lossy WebP whose transparency (RFC 9649, section 2.7.1.2) is such a lossless image. */
  public static byte[] transformedAlpha(int width, int height, int times) throws IOException {
    Bits bits = new Bits().add(1, 8);
    subtractGreen(bits, times);
    ByteArrayOutputStream chunks = new ByteArrayOutputStream();
    chunks.write(chunk("VP8X", canvas(1 << 4, width, height)));
    chunks.write(chunk("ALPH", oneColour(bits)));
    chunks.write(chunk("VP8 ", lossyFrame(width, height)));
    return riff(chunks.toByteArray());
  }

  /** A lossless WebP of a few pixels with the most codes there can be (section 6.2.2). */
  public static byte[] manyCodes() {
    Bits bits = losslessHead(8, 8).add(0, 2).add(1, 1).add(0, 3);
    // the image of codes: no cache; green and red are 255, so there are 65536 of them
    bits.add(0, 1);
    for (int symbol : new int[] {255, 255, 0, 0, 0}) {
      bits.add(1, 1).add(0, 1).add(1, 1).add(symbol, 8);
    }
    for (int code = 0; code < 65_536; code++) {
      fiveCodes(bits);
    }
    return riff(chunk("VP8L", bits.add(0, 64).bytes()));
  }

  private static Bits losslessHead(int width, int height) {
    return new Bits().add(0x2F, 8).add(width - 1, 14).add(height - 1, 14).add(0, 4);
  }

  private static void subtractGreen(Bits bits, int times) {
    for (int i = 0; i < times; i++) {
      bits.add(1, 1).add(2, 2);
    }
    bits.add(0, 1);
  }

  private static byte[] oneColour(Bits bits) {
    // no cache, no further codes
    bits.add(0, 2);
    fiveCodes(bits);
    // decoders read ahead
    return bits.add(0, 256).bytes();
  }

  /** Each simple, of one symbol that has one bit, 0. */
  private static void fiveCodes(Bits bits) {
    for (int code = 0; code < 5; code++) {
      bits.add(1, 1).add(0, 3);
    }
  }

  /** Bits from the lowest on. */
  private static final class Bits {
    private final ByteArrayOutputStream full = new ByteArrayOutputStream();
    private int open;
    private int count;

    Bits add(int value, int bits) {
      for (int i = 0; i < bits; i++) {
        open |= (i < Integer.SIZE ? value >> i & 1 : 0) << count++;
        if (count == 8) {
          full.write(open);
          open = 0;
          count = 0;
        }
      }
      return this;
    }

    byte[] bytes() {
      full.write(open);
      return full.toByteArray();
    }
  }

  /** An extended WebP with the same lossy image again and again. */
  public static byte[] repeatedWebp(int width, int height, int times) throws IOException {
    ByteArrayOutputStream chunks = new ByteArrayOutputStream();
    chunks.write(chunk("VP8X", canvas(0, width, height)));
    byte[] image = chunk("VP8 ", lossyFrame(width, height));
    for (int i = 0; i < times; i++) {
      chunks.write(image);
    }
    return riff(chunks.toByteArray());
  }

  private static byte[] canvas(int flags, int width, int height) {
    ByteBuffer canvas = ByteBuffer.allocate(10).order(ByteOrder.LITTLE_ENDIAN).putInt(flags);
    canvas.putShort((short) (width - 1)).put((byte) 0).putShort((short) (height - 1)).put((byte) 0);
    return canvas.array();
  }

  private static byte[] riff(byte[] chunks) {
    return ByteBuffer.allocate(12 + chunks.length)
        .order(ByteOrder.LITTLE_ENDIAN)
        .put(ascii("RIFF"))
        .putInt(4 + chunks.length)
        .put(ascii("WEBP"))
        .put(chunks)
        .array();
  }

  private static byte[] chunk(String name, byte[] content) {
    return ByteBuffer.allocate(8 + content.length + content.length % 2)
        .order(ByteOrder.LITTLE_ENDIAN)
        .put(ascii(name))
        .putInt(content.length)
        .put(content)
        .array();
  }

  /** A progressive JPEG whose first scan comes so many times (ITU-T T.81, section G.1). */
  public static byte[] manyScans(int width, int height, int scans) throws IOException {
    byte[] plain = progressive(width, height);
    int start = marker(plain, 2, 0xDA);
    int end = start + 2;
    while ((plain[end] & 0xFF) != 0xFF || plain[end + 1] == 0) {
      end++;
    }
    byte[] first = Arrays.copyOfRange(plain, start, end);
    ByteArrayOutputStream all = new ByteArrayOutputStream();
    all.write(plain, 0, start);
    for (int i = 0; i < scans; i++) {
      all.write(first);
    }
    all.write(0xFF);
    all.write(0xD9);
    return all.toByteArray();
  }

  /** A progressive JPEG as the JDK writes it, of ten scans at the most. */
  public static byte[] progressive(int width, int height) throws IOException {
    ImageWriter writer = ImageIO.getImageWritersByFormatName("jpeg").next();
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (MemoryCacheImageOutputStream out = new MemoryCacheImageOutputStream(bytes)) {
      ImageWriteParam param = writer.getDefaultWriteParam();
      param.setProgressiveMode(ImageWriteParam.MODE_DEFAULT);
      writer.setOutput(out);
      BufferedImage picture = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
      writer.write(null, new IIOImage(picture, null, null), param);
    } finally {
      writer.dispose();
    }
    return bytes.toByteArray();
  }

  private static int marker(byte[] jpeg, int from, int code) {
    int at = from;
    while ((jpeg[at + 1] & 0xFF) != code) {
      at += 2 + ((jpeg[at + 2] & 0xFF) << 8 | jpeg[at + 3] & 0xFF);
    }
    return at;
  }

  /** A JPEG with an EXIF block of 64 kB whose thousands of tags all mean nearly all of it. */
  public static byte[] manyTags() throws IOException {
    byte[] jpeg = Pictures.of(60, 40, "jpeg");
    int length = 65_000;
    int tags = 5_000;
    ByteBuffer exif = ByteBuffer.allocate(4 + length);
    exif.put((byte) 0xFF).put((byte) 0xE1).putShort((short) (2 + length)).put(ascii("Exif\0\0"));
    exif.put(ascii("MM\0*")).putInt(8).putShort((short) tags);
    for (int tag = 0; tag < tags; tag++) {
      exif.putShort((short) (0x9000 + tag)).putShort((short) 7).putInt(60_000).putInt(8);
    }
    ByteArrayOutputStream all = new ByteArrayOutputStream();
    all.write(jpeg, 0, 2);
    all.write(exif.array());
    all.write(jpeg, 2, jpeg.length - 2);
    return all.toByteArray();
  }

  /**
   * A PNG with texts that inflate (PNG, third edition, section 11.3.3), of few colours, for which
   * the JDK reads all that stands before the picture.
   *
   * @param each megabytes of one text
   */
  public static byte[] swellingText(String type, int texts, int each) throws IOException {
    BufferedImage picture = new BufferedImage(30, 20, BufferedImage.TYPE_BYTE_INDEXED);
    byte[] png = Pictures.encode(picture, "png");
    byte[] head = ascii(type.equals("iTXt") ? "a\0\1\0\0\0" : "a\0\0");
    ByteArrayOutputStream text = new ByteArrayOutputStream();
    text.write(head);
    text.write(deflated(each));
    ByteArrayOutputStream all = new ByteArrayOutputStream();
    int behindHeader = 8 + 12 + 13;
    all.write(png, 0, behindHeader);
    for (int i = 0; i < texts; i++) {
      all.write(pngChunk(type, text.toByteArray()));
    }
    all.write(png, behindHeader, png.length - behindHeader);
    return all.toByteArray();
  }

  /** A PNG of one row. */
  public static byte[] oneRow(int width) throws IOException {
    byte[] head = Pictures.pngHeader(width, 1);
    ByteArrayOutputStream all = new ByteArrayOutputStream();
    all.write(head);
    all.write(pngChunk("IDAT", deflated(width * 3L + 1)));
    all.write(pngChunk("IEND", new byte[0]));
    return all.toByteArray();
  }

  private static byte[] deflated(int megabytes) throws IOException {
    return deflated((long) megabytes << 20);
  }

  private static byte[] deflated(long zeros) throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (DeflaterOutputStream out =
        new DeflaterOutputStream(bytes, new Deflater(Deflater.BEST_COMPRESSION))) {
      byte[] some = new byte[1 << 16];
      for (long left = zeros; left > 0; left -= some.length) {
        out.write(some, 0, (int) Math.min(left, some.length));
      }
    }
    return bytes.toByteArray();
  }

  static byte[] pngChunk(String type, byte[] content) {
    CRC32 sum = new CRC32();
    sum.update(ascii(type));
    sum.update(content);
    return ByteBuffer.allocate(12 + content.length)
        .putInt(content.length)
        .put(ascii(type))
        .put(content)
        .putInt((int) sum.getValue())
        .array();
  }

  private static byte[] ascii(String text) {
    return text.getBytes(StandardCharsets.ISO_8859_1);
  }
}
