package club.emberwell.member;

import club.emberwell.quantity.UnitPreferences;
import java.time.Instant;
import java.util.Set;
import java.util.UUID;

/**
 * An account as services show it.
 *
 * @param number the ordinal that stands for the member in columns
 * @param email null where none was given; only for the member and owners
 * @param units how the member reads and writes numbers
 * @param version for If-Match
 * @param emailConfirmed a letter to the address arrived
 * @param hasPassword whether there is one to sign in with
 */
public record MemberView(
    UUID id,
    long number,
    String handle,
    String email,
    Role role,
    MemberStatus status,
    UnitPreferences units,
    Instant createdAt,
    long version,
    boolean emailConfirmed,
    boolean hasPassword) {
  /** This member as somebody who asks for something. */
  public Actor actor() {
    return new Actor(id, handle, role, units);
  }

  /** This member as a token of these scopes shows it: no moderator without {@code moderate}. */
  MemberView within(Set<Scope> scopes) {
    if (scopes.contains(Scope.MODERATE) || !role.atLeast(Role.MODERATOR)) {
      return this;
    }
    return new MemberView(
        id,
        number,
        handle,
        email,
        Role.MEMBER,
        status,
        units,
        createdAt,
        version,
        emailConfirmed,
        hasPassword);
  }
}
