package club.emberwell.member;

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

  public boolean atLeast(Role other) {
    return compareTo(other) >= 0;
  }
}
