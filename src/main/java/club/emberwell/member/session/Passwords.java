package club.emberwell.member.session;

import club.emberwell.remark.Remark;
import io.micrometer.core.instrument.MeterRegistry;
import io.micrometer.core.instrument.Timer;
import jakarta.annotation.PreDestroy;
import jakarta.enterprise.context.ApplicationScoped;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.SecureRandom;
import java.util.Base64;
import java.util.Optional;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.RejectedExecutionException;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.bouncycastle.crypto.generators.Argon2BytesGenerator;
import org.bouncycastle.crypto.params.Argon2Parameters;

/**
 * Argon2id (RFC 9106) with 19 MiB, 2 passes, 1 lane, the first choice of the OWASP password storage
 * cheat sheet, kept as PHC strings. A small pool bounds memory and time: when its queue is full a
 * sign-in is asked to come back.
 */
@ApplicationScoped
public class Passwords {
  private static final int LANES = 1;
  private static final int HASH_BYTES = 32;
  private static final int SALT_BYTES = 16;
  private static final Pattern PHC =
      Pattern.compile(
          "\\$argon2id\\$v=19\\$m=(\\d{1,7}),t=(\\d{1,3}),p=(\\d{1,2})"
              + "\\$([A-Za-z0-9+/]+)\\$([A-Za-z0-9+/]+)");

  private final int memory;
  private final int passes;
  private final SecureRandom random = new SecureRandom();
  private final PasswordRules rules;
  private final ThreadPoolExecutor pool;
  private final Timer timer;

  /** Compared against where no account is found, so that an unknown name costs the same work. */
  private final String dummy;

  Passwords(PasswordRules rules, SignInLimits limits, MeterRegistry meters) {
    this.rules = rules;
    memory = limits.hashMemory();
    passes = limits.hashPasses();
    pool =
        new ThreadPoolExecutor(
            limits.hashThreads(),
            limits.hashThreads(),
            1,
            TimeUnit.MINUTES,
            new ArrayBlockingQueue<>(limits.hashQueue()));
    pool.allowCoreThreadTimeOut(true);
    timer = meters.timer("emberwell.password.hash");
    dummy = encode(new byte[SALT_BYTES], new byte[HASH_BYTES]);
  }

  @PreDestroy
  void stop() {
    pool.shutdownNow();
  }

  /**
   * What is wrong with a new password, if anything.
   *
   * @param field where to point
   * @param handle the member's own name, a word nobody else would need to guess
   */
  public Optional<Remark> check(String password, String field, String handle) {
    return rules.check(password, field, handle);
  }

  /** A PHC string with a fresh salt. */
  public String hash(String password) {
    byte[] salt = new byte[SALT_BYTES];
    random.nextBytes(salt);
    return inPool(
        () ->
            encode(
                salt,
                argon(PasswordRules.normal(password), salt, memory, passes, LANES, HASH_BYTES)));
  }

  /**
   * Whether the password belongs to the stored hash; the same work is done when there is none.
   *
   * @param phc null for an unknown account or one without a password
   */
  boolean matches(String password, String phc) {
    Matcher stored = PHC.matcher(phc == null ? dummy : phc);
    if (!stored.matches()) {
      throw new IllegalStateException("a stored password hash cannot be read");
    }
    byte[] salt = Base64.getDecoder().decode(stored.group(4));
    byte[] expected = Base64.getDecoder().decode(stored.group(5));
    byte[] got =
        inPool(
            () ->
                argon(
                    password,
                    salt,
                    Integer.parseInt(stored.group(1)),
                    Integer.parseInt(stored.group(2)),
                    Integer.parseInt(stored.group(3)),
                    expected.length));
    return MessageDigest.isEqual(expected, got) && phc != null;
  }

  /** Whether the hash was made with other parameters than today's. */
  boolean stale(String phc) {
    Matcher stored = PHC.matcher(phc);
    return !stored.matches()
        || Integer.parseInt(stored.group(1)) != memory
        || Integer.parseInt(stored.group(2)) != passes
        || Integer.parseInt(stored.group(3)) != LANES;
  }

  private String encode(byte[] salt, byte[] hash) {
    Base64.Encoder plain = Base64.getEncoder().withoutPadding();
    return "$argon2id$v=19$m=%d,t=%d,p=%d$%s$%s"
        .formatted(memory, passes, LANES, plain.encodeToString(salt), plain.encodeToString(hash));
  }

  private static byte[] argon(
      String password, byte[] salt, int memory, int passes, int lanes, int length) {
    Argon2BytesGenerator generator = new Argon2BytesGenerator();
    generator.init(
        new Argon2Parameters.Builder(Argon2Parameters.ARGON2_id)
            .withVersion(Argon2Parameters.ARGON2_VERSION_13)
            .withMemoryAsKB(memory)
            .withIterations(passes)
            .withParallelism(lanes)
            .withSalt(salt)
            .build());
    byte[] out = new byte[length];
    generator.generateBytes(password.getBytes(StandardCharsets.UTF_8), out);
    return out;
  }

  private <T> T inPool(Callable<T> work) {
    try {
      return pool.submit(() -> timer.recordCallable(work)).get();
    } catch (RejectedExecutionException e) {
      throw new HashingBusy(e);
    } catch (ExecutionException e) {
      throw new IllegalStateException(e.getCause());
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException(e);
    }
  }
}
