package club.emberwell.member;

import java.security.SecureRandom;
import java.util.Base64;
import java.util.Locale;
import org.apache.commons.codec.digest.DigestUtils;
import org.apache.commons.codec.digest.HmacAlgorithms;
import org.apache.commons.codec.digest.HmacUtils;

/** Random secrets and what is stored of them. */
public final class Secrets {
  private static final SecureRandom RANDOM = new SecureRandom();
  private static final int BYTES = 32;

  /** 32 of them, without I, L, O and U, which look like others. */
  private static final String CODE_LETTERS = "0123456789ABCDEFGHJKMNPQRSTVWXYZ";

  private static final int CODE_LENGTH = 28;
  private static final int CODE_GROUP = 4;

  private Secrets() {}

  /** 256 random bits, base64url without padding: 43 characters. */
  public static String random() {
    byte[] bytes = new byte[BYTES];
    RANDOM.nextBytes(bytes);
    return Base64.getUrlEncoder().withoutPadding().encodeToString(bytes);
  }

  /**
   * A secret that a person can copy by eye: 28 characters in groups of four, 140 bits. Whoever
   * knows the key makes the same: nodes need not tell each other.
   */
  public static String code(String key, String purpose) {
    return code(new HmacUtils(HmacAlgorithms.HMAC_SHA_256, key).hmac(purpose));
  }

  private static String code(byte[] bytes) {
    StringBuilder code = new StringBuilder();
    for (int i = 0; i < CODE_LENGTH; i++) {
      if (i > 0 && i % CODE_GROUP == 0) {
        code.append('-');
      }
      code.append(CODE_LETTERS.charAt(Byte.toUnsignedInt(bytes[i]) % CODE_LETTERS.length()));
    }
    return code.toString();
  }

  /** A code as it is hashed, however it was typed. */
  public static String plain(String code) {
    return code == null ? "" : code.replaceAll("[\\s-]", "").toUpperCase(Locale.ROOT);
  }

  /** What stands in the database; a random secret needs no slow hash. */
  public static byte[] sha256(String secret) {
    return DigestUtils.sha256(secret);
  }
}
