package club.emberwell.tag;

import club.emberwell.remark.Reading;
import club.emberwell.remark.Remark;
import club.emberwell.remark.RemarkId;
import java.util.Locale;
import java.util.random.RandomGenerator;

/**
 * A code such as {@code K7F-4}: three to five characters, a dash and a check character. No
 * character looks like another one of the alphabet; whoever reads one for another is understood.
 *
 * <p>The check is the pure system of ISO/IEC 7064 with modulus 29 and radix 2: with the check
 * character as place 0, the values times 2 to the place sum up to 1 modulo 29. As 29 is prime and 2
 * generates its residues, every single wrong character and every swap of two characters is noticed.
 *
 * @param text as it is printed and stored
 */
public record TagCode(String text) {
  /** Ten digits and nineteen letters: none of B, I, L, O, S, U, Z. */
  static final String ALPHABET = "0123456789ACDEFGHJKMNPQRTVWXY";

  static final int SHORTEST = 3;
  static final int LONGEST = 5;

  private static final int DIGITS = 10;
  private static final int MODULUS = ALPHABET.length();
  private static final int RADIX = 2;

  private static final String LOOKS_LIKE = "OILZSBU";
  private static final String IS = "011258V";

  /** What precedes the code in the address a label's square holds. */
  private static final String IN_ADDRESS = "/T/";

  /**
   * Reads what was typed or scanned: any case, with or without dash and spaces, look-alikes, or the
   * whole address of a tag.
   */
  public static Reading<TagCode> read(String typed) {
    String said = typed == null ? "" : typed.strip();
    String upper = said.toUpperCase(Locale.ROOT);
    StringBuilder plain = new StringBuilder();
    upper
        .substring(upper.lastIndexOf(IN_ADDRESS) < 0 ? 0 : afterAddress(upper))
        .codePoints()
        .filter(
            c -> !Character.isWhitespace(c) && Character.getType(c) != Character.DASH_PUNCTUATION)
        .map(TagCode::understood)
        .forEach(plain::appendCodePoint);
    int body = plain.length() - 1;
    if (body < SHORTEST || body > LONGEST || !plain.chars().allMatch(c -> value(c) >= 0)) {
      return refused(typed, "A tag is four to six letters and digits, such as K7F-4.");
    }
    TagCode code = of(plain.substring(0, body));
    if (code.text.charAt(body + 1) != plain.charAt(body)) {
      String shown = plain.insert(body, '-').toString();
      return refused(typed, shown + " is not a tag: a character is wrong, or two are swapped.");
    }
    return Reading.of(typed, code);
  }

  private static int afterAddress(String upper) {
    return upper.lastIndexOf(IN_ADDRESS) + IN_ADDRESS.length();
  }

  private static Reading<TagCode> refused(String typed, String why) {
    return Reading.refused(typed, Remark.error(RemarkId.TAG_UNREADABLE, "", why));
  }

  private static int understood(int c) {
    int like = LOOKS_LIKE.indexOf(c);
    return like < 0 ? c : IS.charAt(like);
  }

  /** The code that begins with these characters of the alphabet. */
  static TagCode of(String body) {
    return new TagCode(body + "-" + ALPHABET.charAt(check(body)));
  }

  /**
   * A code drawn by chance. It begins with a letter and holds a digit: no spreadsheet takes it for
   * a number, and nobody reads a word in it.
   *
   * @param length characters before the dash
   */
  static TagCode drawn(int length, RandomGenerator random) {
    StringBuilder body = new StringBuilder();
    do {
      body.setLength(0);
      body.append(ALPHABET.charAt(random.nextInt(DIGITS, MODULUS)));
      while (body.length() < length) {
        body.append(ALPHABET.charAt(random.nextInt(MODULUS)));
      }
    } while (body.chars().allMatch(Character::isLetter));
    return of(body.toString());
  }

  private static int check(String body) {
    int sum = 0;
    for (int i = 0; i < body.length(); i++) {
      sum = (sum + value(body.charAt(i))) * RADIX % MODULUS;
    }
    return Math.floorMod(1 - sum, MODULUS);
  }

  private static int value(int c) {
    return ALPHABET.indexOf(c);
  }

  /** Its address on this server: a path. */
  public String path() {
    return "/t/" + text;
  }

  @Override
  public String toString() {
    return text;
  }
}
