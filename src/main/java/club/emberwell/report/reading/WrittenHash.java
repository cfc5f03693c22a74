package club.emberwell.report.reading;

import club.emberwell.bench.StoredJson;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/** Tells whether two entries say the same; what was confirmed does not matter. */
public final class WrittenHash {
  private WrittenHash() {}

  public static String of(WrittenReport written) {
    return ofWords(written.withConfirmed(null));
  }

  /** The same for words of any kind. */
  public static String ofWords(Object written) {
    String json = StoredJson.write(written);
    try {
      MessageDigest digest = MessageDigest.getInstance("SHA-256");
      return HexFormat.of().formatHex(digest.digest(json.getBytes(StandardCharsets.UTF_8)));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException(e);
    }
  }
}
