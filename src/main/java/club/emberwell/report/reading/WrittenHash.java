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
    String json = StoredJson.write(written.withConfirmed(null));
    try {
      MessageDigest digest = MessageDigest.getInstance("SHA-256");
      return HexFormat.of().formatHex(digest.digest(json.getBytes(StandardCharsets.UTF_8)));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException(e);
    }
  }
}
