package club.emberwell.exchange.open;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.DigestOutputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/** The sums by which a copy is checked. */
final class Sums {
  private Sums() {}

  static MessageDigest sha256() {
    try {
      return MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException(e);
    }
  }

  /** Of a file, in hexadecimal digits. */
  static String of(Path file) throws IOException {
    MessageDigest sum = sha256();
    try (InputStream in = Files.newInputStream(file)) {
      in.transferTo(new DigestOutputStream(OutputStream.nullOutputStream(), sum));
    }
    return HexFormat.of().formatHex(sum.digest());
  }
}
