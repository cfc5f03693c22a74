package club.emberwell.api.member;

import club.emberwell.access.Problems;
import club.emberwell.member.Outcome;
import club.emberwell.remark.Remark;
import club.emberwell.remark.RemarkId;
import java.util.List;

/** Answers where the caller is known and only the password is at fault. */
final class Proofs {
  private Proofs() {}

  /** The value; a wrong password is a fault at its field, not a missing sign-in. */
  static <T> T unwrap(Outcome<T> outcome) {
    if (outcome instanceof Outcome.Unproven<T> unproven) {
      throw Problems.of(List.of(Remark.error(RemarkId.PASSWORD_WRONG, "/password", unproven.why())))
          .exception();
    }
    return Problems.unwrap(outcome);
  }
}
