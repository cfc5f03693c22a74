package club.emberwell.member.session;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.junit.QuarkusTest;
import io.smallrye.config.WithDefault;
import jakarta.inject.Inject;
import java.util.HexFormat;
import org.bouncycastle.crypto.generators.Argon2BytesGenerator;
import org.bouncycastle.crypto.params.Argon2Parameters;
import org.junit.jupiter.api.Test;

@QuarkusTest
class PasswordsTest {
  @Inject Passwords passwords;

  /** RFC 9106, section 5.3, the Argon2id test vector. */
  @Test
  void theLibraryComputesTheTestVectorOfRfc9106() {
    Argon2BytesGenerator generator = new Argon2BytesGenerator();
    generator.init(
        new Argon2Parameters.Builder(Argon2Parameters.ARGON2_id)
            .withVersion(Argon2Parameters.ARGON2_VERSION_13)
            .withMemoryAsKB(32)
            .withIterations(3)
            .withParallelism(4)
            .withSalt(filled(16, 2))
            .withSecret(filled(8, 3))
            .withAdditional(filled(12, 4))
            .build());
    byte[] tag = new byte[32];
    generator.generateBytes(filled(32, 1), tag);
    assertEquals(
        "0d640df58d78766c08c037a34a8b53c9d01ef0452d75b65eb52520e96b01e659",
        HexFormat.of().formatHex(tag));
  }

  private static byte[] filled(int length, int value) {
    byte[] bytes = new byte[length];
    java.util.Arrays.fill(bytes, (byte) value);
    return bytes;
  }

  @Test
  void aHashIsAPhcStringWithItsOwnSalt() {
    String one = passwords.hash("nine grey herons");
    assertTrue(one.startsWith("$argon2id$v=19$m=64,t=1,p=1$"), one);
    assertFalse(one.equals(passwords.hash("nine grey herons")));
    assertTrue(passwords.matches("nine grey herons", one));
    assertFalse(passwords.matches("nine grey heron", one));
  }

  /** The OWASP cheat sheet's first choice; tests make do with less, because they hash thousands. */
  @Test
  void clubsHashWithNineteenMebibytesAndTwoPasses() throws NoSuchMethodException {
    assertEquals("19456", usual("hashMemory"));
    assertEquals("2", usual("hashPasses"));
  }

  private static String usual(String limit) throws NoSuchMethodException {
    return SignInLimits.class.getMethod(limit).getAnnotation(WithDefault.class).value();
  }

  @Test
  void anAccountWithoutAPasswordMatchesNothing() {
    assertFalse(passwords.matches("", null));
    assertFalse(passwords.matches("anything", null));
  }

  @Test
  void oldParametersAreSeenAndAStoredHashThatIsNoneIsAnError() {
    assertFalse(passwords.stale(passwords.hash("nine grey herons")));
    assertTrue(passwords.stale("$argon2id$v=19$m=8192,t=1,p=1$AAAAAAAAAAAAAAAAAAAAAA$AAAA"));
    assertThrows(IllegalStateException.class, () -> passwords.matches("x", "plain text"));
  }
}
