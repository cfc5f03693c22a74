package club.emberwell.api.report;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;

/** Tells one upload from another. */
final class Digests {
  private Digests() {}

  static byte[] sha256(byte[] bytes) {
    try {
      return MessageDigest.getInstance("SHA-256").digest(bytes);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException(e);
    }
  }
}
