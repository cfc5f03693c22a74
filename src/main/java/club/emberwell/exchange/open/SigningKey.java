package club.emberwell.exchange.open;

import jakarta.enterprise.context.ApplicationScoped;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.GeneralSecurityException;
import java.security.Key;
import java.security.KeyFactory;
import java.security.KeyPair;
import java.security.KeyPairGenerator;
import java.security.Signature;
import java.security.spec.PKCS8EncodedKeySpec;
import java.security.spec.X509EncodedKeySpec;
import java.util.Base64;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/**
 * The key by which the club signs its data (Ed25519, RFC 8032), made once and kept in the server's
 * home, readable by its owner alone: private part (PKCS 8) and public part (X.509) as PEM.
 */
@ApplicationScoped
class SigningKey {
  private static final String ALGORITHM = "Ed25519";
  private static final String PRIVATE = "PRIVATE KEY";
  private static final String PUBLIC = "PUBLIC KEY";
  private static final int LINE = 64;

  private final Path file;

  SigningKey(@ConfigProperty(name = "emberwell.data.signing-key") Path file) {
    this.file = file;
  }

  /** A signature, and the key that checks it. */
  record Signed(byte[] signature, String publicKey) {}

  /** Signs, with a new key where there is none yet. */
  Signed sign(byte[] text) {
    try {
      String kept = kept();
      KeyFactory keys = KeyFactory.getInstance(ALGORITHM);
      Signature signature = Signature.getInstance(ALGORITHM);
      signature.initSign(keys.generatePrivate(new PKCS8EncodedKeySpec(der(kept, PRIVATE))));
      signature.update(text);
      Key open = keys.generatePublic(new X509EncodedKeySpec(der(kept, PUBLIC)));
      return new Signed(signature.sign(), pem(open, PUBLIC));
    } catch (GeneralSecurityException e) {
      throw new IllegalStateException("The signing key in " + file + " cannot be used.", e);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private String kept() throws IOException, GeneralSecurityException {
    if (!Files.exists(file)) {
      KeyPair pair = KeyPairGenerator.getInstance(ALGORITHM).generateKeyPair();
      keep(pem(pair.getPrivate(), PRIVATE) + pem(pair.getPublic(), PUBLIC));
    }
    return Files.readString(file, StandardCharsets.US_ASCII);
  }

  /** Whole or not at all, and never in place of another. */
  private void keep(String pem) throws IOException {
    Path made =
        Files.createTempFile(
            file.toAbsolutePath().getParent(),
            "signing-key",
            ".new",
            PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rw-------")));
    try {
      Files.writeString(made, pem, StandardCharsets.US_ASCII);
      Files.createLink(file, made);
    } catch (FileAlreadyExistsException e) {
      return;
    } finally {
      Files.deleteIfExists(made);
    }
  }

  private static String pem(Key key, String what) {
    Base64.Encoder lines = Base64.getMimeEncoder(LINE, new byte[] {'\n'});
    return "-----BEGIN %1$s-----\n%2$s\n-----END %1$s-----\n"
        .formatted(what, lines.encodeToString(key.getEncoded()));
  }

  private static byte[] der(String pem, String what) throws GeneralSecurityException {
    String head = "-----BEGIN " + what + "-----";
    int from = pem.indexOf(head);
    int to = pem.indexOf("-----END " + what + "-----");
    if (from < 0 || to < from) {
      throw new GeneralSecurityException("no " + what);
    }
    return Base64.getMimeDecoder().decode(pem.substring(from + head.length(), to));
  }
}
