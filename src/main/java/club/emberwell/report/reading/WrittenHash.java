package club.emberwell.report.reading;

import club.emberwell.bench.StoredJson;
import org.apache.commons.codec.digest.DigestUtils;

/** Tells whether two entries say the same; what was confirmed does not matter. */
public final class WrittenHash {
  private WrittenHash() {}

  public static String of(WrittenReport written) {
    return ofWords(written.withConfirmed(null));
  }

  /** The same for words of any kind. */
  public static String ofWords(Object written) {
    return DigestUtils.sha256Hex(StoredJson.write(written));
  }
}
