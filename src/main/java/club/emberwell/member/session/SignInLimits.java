package club.emberwell.member.session;

import club.emberwell.member.pace.Pace;
import io.smallrye.config.ConfigMapping;
import io.smallrye.config.WithDefault;
import java.time.Duration;

/** Every limit of signing in that an operator may set. */
@ConfigMapping(prefix = "emberwell.limits.sign-in")
public interface SignInLimits {
  /** A session unused for so long is over. */
  @WithDefault("14D")
  Duration sessionIdle();

  /** A session ends after so long, used or not. */
  @WithDefault("60D")
  Duration sessionLife();

  @WithDefault("365D")
  Duration tokenLife();

  /** Who came in and from where is kept so long: a season, in which somebody may miss something. */
  @WithDefault("90D")
  Duration kept();

  /** How long a sign-in or a confirmation stands for the person before something grave. */
  @WithDefault("10M")
  Duration fresh();

  /** Argon2id, KiB: the first choice of the OWASP password storage cheat sheet. */
  @WithDefault("19456")
  int hashMemory();

  @WithDefault("2")
  int hashPasses();

  /** Threads that hash passwords; each takes {@link #hashMemory()} for some 40 ms. */
  @WithDefault("2")
  int hashThreads();

  /** Sign-ins that may wait for one; beyond, 429. */
  @WithDefault("64")
  int hashQueue();

  /**
   * Wrong passwords for one account, wherever from. A short cap: nobody is locked out by others.
   */
  @WithDefault("5 in 1H, then 1S to 30S")
  Pace account();

  /** Wrong passwords from one address (IPv4 /24, IPv6 /64); a workshop shares one. */
  @WithDefault("30 in 1H, then 2S to 15M")
  Pace address();
}
