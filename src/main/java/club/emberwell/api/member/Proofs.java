package club.emberwell.api.member;

import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.RemarkId;
import club.emberwell.remark.Unproven;

/** Answers where the caller is known and only the password is at fault. */
final class Proofs {
  private Proofs() {}

  /** Does something; a wrong password is a fault at its field, not a missing sign-in. */
  static void at(String pointer, Runnable deed) {
    try {
      deed.run();
    } catch (Unproven e) {
      throw new EntryRefused(RemarkId.PASSWORD_WRONG, pointer, e.getMessage());
    }
  }
}
