package club.emberwell.member;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** What somebody may do; each includes those before it. */
public enum Role {
  READER,
  MEMBER,
  MODERATOR,
  OWNER;

  /** Names for @RolesAllowed; an identity holds its own and all lower ones. */
  public static final String READ = "reader";

  public static final String WRITE = "member";
  public static final String MODERATE = "moderator";
  public static final String OWN = "owner";

  /** As stored and as the API spells it. */
  public String code() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** Reads what {@link #code()} wrote; empty for anything else. */
  public static Optional<Role> of(String code) {
    return Arrays.stream(values()).filter(role -> role.code().equals(code)).findFirst();
  }

  public boolean atLeast(Role other) {
    return compareTo(other) >= 0;
  }
}
