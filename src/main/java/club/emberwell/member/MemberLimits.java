package club.emberwell.member;

import java.time.Duration;

/** Sizes of what is kept about members, in characters (code points) where nothing else is said. */
public final class MemberLimits {
  public static final int HANDLE_MIN = 3;
  public static final int HANDLE_MAX = 30;

  /** How names of members end whom no person stands behind; nobody else's does. */
  public static final String INVENTED = "-invented";

  /** After Unicode normalisation. */
  public static final int PASSWORD_MIN = 8;

  public static final int PASSWORD_MAX = 128;
  public static final int EMAIL_MAX = 254;

  /** Names of tokens. */
  public static final int LABEL_MAX = 60;

  /** Of what a browser calls itself; the longest in use have some 250 letters. */
  public static final int AGENT_MAX = 300;

  /** Reasons that somebody in charge gives. */
  public static final int REASON_MAX = 500;

  /** Tokens one member can have at a time. */
  public static final int TOKENS_MAX = 20;

  /** How often use of a session or token is written down at most. */
  public static final Duration SEEN_EVERY = Duration.ofMinutes(1);

  /** Of sign-ins that a member sees at once. */
  public static final int SIGN_INS_SHOWN = 100;

  /** A replaced secret signs in so long, as a slow page may have been asked for with it. */
  public static final Duration REPLACED_LIFE = Duration.ofMinutes(1);

  /** Of a key that makes a repeated write harmless. */
  public static final int WRITE_KEY_MAX = 128;

  /** Answers to keyed writes are kept so long. */
  public static final Duration WRITE_KEY_LIFE = Duration.ofDays(8);

  private MemberLimits() {}
}
