package club.emberwell.member;

import java.util.Locale;

/** Where an account stands. Only an active one signs in. */
public enum MemberStatus {
  ACTIVE,
  /** Asked to come in; somebody has to open. */
  WAITING,
  BANNED,
  /** The person is gone; what was measured stays under no name. */
  ERASED;

  /** As stored. */
  public String code() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** Reads what {@link #code()} wrote. */
  public static MemberStatus of(String code) {
    return valueOf(code.toUpperCase(Locale.ROOT));
  }
}
