package club.emberwell.hook;

import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.security.SecureRandom;
import java.time.Instant;
import java.util.Base64;
import java.util.List;
import java.util.stream.Collectors;
import javax.crypto.Mac;
import javax.crypto.spec.SecretKeySpec;

/**
 * Signs a delivery as the Standard Webhooks specification 1.0.0 says: HMAC-SHA256 (RFC 2104, FIPS
 * 180-4) over {@code id.timestamp.body} by the bytes behind {@code whsec_}, in base64.
 */
final class HookSignature {
  static final String PREFIX = "whsec_";
  private static final String ALGORITHM = "HmacSHA256";
  private static final int BYTES = 32;
  private static final SecureRandom RANDOM = new SecureRandom();

  private HookSignature() {}

  /** A new secret of 256 random bits. */
  static String secret() {
    byte[] bytes = new byte[BYTES];
    RANDOM.nextBytes(bytes);
    return PREFIX + Base64.getEncoder().encodeToString(bytes);
  }

  /**
   * The header {@code webhook-signature}.
   *
   * @param secrets one, or two while one takes the place of the other
   */
  static String header(List<String> secrets, String id, Instant at, String body) {
    String signed = id + "." + at.getEpochSecond() + "." + body;
    return secrets.stream()
        .map(secret -> "v1," + Base64.getEncoder().encodeToString(mac(key(secret), signed)))
        .collect(Collectors.joining(" "));
  }

  private static byte[] key(String secret) {
    return Base64.getDecoder().decode(secret.substring(PREFIX.length()));
  }

  static byte[] mac(byte[] key, String text) {
    try {
      Mac mac = Mac.getInstance(ALGORITHM);
      mac.init(new SecretKeySpec(key, ALGORITHM));
      return mac.doFinal(text.getBytes(StandardCharsets.UTF_8));
    } catch (GeneralSecurityException e) {
      throw new IllegalStateException(e);
    }
  }
}
