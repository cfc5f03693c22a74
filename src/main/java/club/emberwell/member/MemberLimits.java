package club.emberwell.member;

import io.smallrye.config.ConfigMapping;
import io.smallrye.config.WithDefault;
import java.time.Duration;

/** Every limit of accounts, sign-in and keys. */
@ConfigMapping(prefix = "emberwell.limits.member")
public interface MemberLimits {
  @WithDefault("3")
  int handleMin();

  @WithDefault("30")
  int handleMax();

  /** Characters (code points) after Unicode normalisation. */
  @WithDefault("8")
  int passwordMin();

  @WithDefault("128")
  int passwordMax();

  @WithDefault("254")
  int emailMax();

  /** Names of sessions and API tokens, in characters. */
  @WithDefault("60")
  int labelMax();

  /** Tokens one member can have at a time. */
  @WithDefault("20")
  int tokensMax();

  @WithDefault("365D")
  Duration tokenLife();

  /** A session unused for so long is over. */
  @WithDefault("14D")
  Duration sessionIdle();

  /** A session ends after so long, used or not. */
  @WithDefault("60D")
  Duration sessionLife();

  /** How often use of a session or token is written down at most. */
  @WithDefault("1M")
  Duration seenEvery();

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

  /** Answers to keyed writes are kept so long. */
  @WithDefault("8D")
  Duration idempotencyLife();

  @WithDefault("128")
  int idempotencyKeyMax();

  /**
   * Wrong passwords for one account, wherever from. A short cap: nobody is locked out by others.
   */
  SignInAccount signInAccount();

  /** Wrong passwords from one address (IPv4 /24, IPv6 /64). */
  SignInAddress signInAddress();

  /** New accounts from one address. */
  SignUpAddress signUpAddress();

  /** So many tries are free in a window; then each waits twice as long as the one before. */
  interface Rule {
    int free();

    Duration first();

    Duration longest();

    Duration window();
  }

  /** Defaults for an account. */
  interface SignInAccount extends Rule {
    @Override
    @WithDefault("5")
    int free();

    @Override
    @WithDefault("1S")
    Duration first();

    @Override
    @WithDefault("30S")
    Duration longest();

    @Override
    @WithDefault("1H")
    Duration window();
  }

  /** Defaults for an address: a workshop shares one, so more is free. */
  interface SignInAddress extends Rule {
    @Override
    @WithDefault("30")
    int free();

    @Override
    @WithDefault("2S")
    Duration first();

    @Override
    @WithDefault("15M")
    Duration longest();

    @Override
    @WithDefault("1H")
    Duration window();
  }

  /** Defaults for sign-up. */
  interface SignUpAddress extends Rule {
    @Override
    @WithDefault("60")
    int free();

    @Override
    @WithDefault("10S")
    Duration first();

    @Override
    @WithDefault("30M")
    Duration longest();

    @Override
    @WithDefault("1H")
    Duration window();
  }
}
