package club.emberwell.member;

import club.emberwell.quantity.UnitPreferences;
import java.util.UUID;

/**
 * Who asks. Every service call that reads or writes something private takes one.
 *
 * @param memberId null for a stranger
 * @param handle empty for a stranger
 * @param units how this person reads numbers
 */
public record Actor(UUID memberId, String handle, Role role, UnitPreferences units) {
  public boolean signedIn() {
    return memberId != null;
  }

  public boolean is(UUID otherMember) {
    return memberId != null && memberId.equals(otherMember);
  }

  public boolean moderates() {
    return role.atLeast(Role.MODERATOR);
  }
}
