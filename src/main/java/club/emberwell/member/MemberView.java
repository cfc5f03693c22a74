package club.emberwell.member;

import club.emberwell.quantity.UnitPreferences;
import java.time.Instant;
import java.util.Set;
import java.util.UUID;

/**
 * An account as services show it.
 *
 * @param number the ordinal that stands for the member in columns
 * @param units how the member reads and writes numbers
 * @param version for If-Match
 */
public record MemberView(
    UUID id,
    long number,
    String handle,
    Standing standing,
    Contact contact,
    UnitPreferences units,
    Sharing sharing,
    long version) {
  /** What the member may do, and since when somebody of this name has been here. */
  public record Standing(Role role, MemberStatus status, Instant since) {}

  /**
   * Only for the member and owners.
   *
   * @param email null where none was given
   * @param confirmed a letter to the address arrived
   * @param hasPassword whether there is one to sign in with
   */
  public record Contact(String email, boolean confirmed, boolean hasPassword) {}

  /**
   * How what this member posts from now on may be used.
   *
   * @param licence null = what the club decided
   * @param named whether data that leave the club name the member as author
   */
  public record Sharing(Licence licence, boolean named) {}

  public Role role() {
    return standing.role();
  }

  public MemberStatus status() {
    return standing.status();
  }

  public Instant createdAt() {
    return standing.since();
  }

  public String email() {
    return contact.email();
  }

  public boolean emailConfirmed() {
    return contact.confirmed();
  }

  public boolean hasPassword() {
    return contact.hasPassword();
  }

  /** This member as somebody who asks for something. */
  public Actor actor() {
    return new Actor(id, handle, role(), units);
  }

  /** This member as a token of these scopes shows it: no moderator without {@code moderate}. */
  public MemberView within(Set<Scope> scopes) {
    if (scopes.contains(Scope.MODERATE) || !role().atLeast(Role.MODERATOR)) {
      return this;
    }
    Standing lessened = new Standing(Role.MEMBER, status(), createdAt());
    return new MemberView(id, number, handle, lessened, contact, units, sharing, version);
  }
}
