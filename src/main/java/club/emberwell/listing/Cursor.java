package club.emberwell.listing;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.UUID;
import java.util.function.Supplier;
import java.util.zip.CRC32;

/**
 * A place in a list: what the last row that was read is ordered by. So nothing is read twice and
 * nothing missed when somebody posts meanwhile, as would be with a number of rows to skip.
 *
 * <p>Its text is meant to be handed back as it is: base64url of a checksum, the number of this
 * form, the name of the list, and the keys.
 *
 * @param list which list it is a place in
 * @param keys instants in microseconds of 1970, numbers, ids and words, as text
 */
public record Cursor(String list, List<String> keys) {
  /** The longest text that is read. */
  public static final int TEXT_MAX = 400;

  private static final String FORM = "1";
  private static final char BETWEEN = '\n';
  private static final int SUM = 4;

  public Cursor {
    keys = List.copyOf(keys);
  }

  /**
   * @param keys instants, numbers, ids, texts
   */
  public static Cursor of(String list, List<?> keys) {
    return new Cursor(list, keys.stream().map(Cursor::key).toList());
  }

  private static String key(Object key) {
    return key instanceof Instant time
        ? Long.toString(ChronoUnit.MICROS.between(Instant.EPOCH, time))
        : key.toString();
  }

  /** What a program is given. */
  public String text() {
    List<String> parts = new ArrayList<>(List.of(FORM, list));
    parts.addAll(keys);
    byte[] body = String.join(String.valueOf(BETWEEN), parts).getBytes(StandardCharsets.UTF_8);
    byte[] whole = ByteBuffer.allocate(SUM + body.length).putInt(sum(body)).put(body).array();
    return Base64.getUrlEncoder().withoutPadding().encodeToString(whole);
  }

  /**
   * Reads what a program handed back.
   *
   * @param list the list that is asked for
   * @throws PartRefused for everything that is no place in this list
   */
  public static Cursor read(String list, String text) {
    try {
      if (text.length() > TEXT_MAX) {
        throw new PartRefused(PartRefused.CURSOR);
      }
      ByteBuffer whole = ByteBuffer.wrap(Base64.getUrlDecoder().decode(text));
      int sum = whole.getInt();
      byte[] body = new byte[whole.remaining()];
      whole.get(body);
      String[] parts = new String(body, StandardCharsets.UTF_8).split(String.valueOf(BETWEEN), -1);
      if (sum != sum(body) || !parts[0].equals(FORM) || !parts[1].equals(list)) {
        throw new PartRefused(PartRefused.CURSOR);
      }
      return new Cursor(list, List.of(parts).subList(2, parts.length));
    } catch (RuntimeException e) {
      throw new PartRefused(PartRefused.CURSOR);
    }
  }

  private static int sum(byte[] body) {
    CRC32 crc = new CRC32();
    crc.update(body);
    return (int) crc.getValue();
  }

  Instant time(int key) {
    return Instant.EPOCH.plus(number(key), ChronoUnit.MICROS);
  }

  LocalDate date(int key) {
    return read(() -> LocalDate.parse(keys.get(key)));
  }

  long number(int key) {
    return read(() -> Long.parseLong(keys.get(key)));
  }

  UUID id(int key) {
    return read(() -> UUID.fromString(keys.get(key)));
  }

  String word(int key) {
    return read(() -> keys.get(key));
  }

  /** A text that was made by hand may hold anything. */
  private static <T> T read(Supplier<T> key) {
    try {
      return key.get();
    } catch (IllegalArgumentException | IndexOutOfBoundsException | DateTimeException e) {
      throw new PartRefused(PartRefused.CURSOR);
    }
  }
}
