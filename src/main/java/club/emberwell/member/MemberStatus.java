package club.emberwell.member;

import jakarta.persistence.EnumeratedValue;

/** Where an account stands. Only an active one signs in. */
public enum MemberStatus {
  ACTIVE("active"),
  /** Asked to come in; somebody has to open. */
  WAITING("waiting"),
  BANNED("banned"),
  /** The person is gone; what was measured stays under no name. */
  ERASED("erased");

  @EnumeratedValue private final String code;

  MemberStatus(String code) {
    this.code = code;
  }
}
