package club.emberwell.member;

import club.emberwell.remark.Coded;
import jakarta.persistence.EnumeratedValue;

/** What somebody may do; each includes those before it. */
public enum Role implements Coded {
  READER("reader"),
  MEMBER("member"),
  MODERATOR("moderator"),
  OWNER("owner");

  /** Names for @RolesAllowed; an identity holds its own and all lower ones. */
  public static final String READ = "reader";

  public static final String WRITE = "member";
  public static final String MODERATE = "moderator";
  public static final String OWN = "owner";

  @EnumeratedValue private final String code;

  Role(String code) {
    this.code = code;
  }

  @Override
  public String code() {
    return code;
  }

  public boolean atLeast(Role other) {
    return compareTo(other) >= 0;
  }
}
