package club.emberwell.api.member;

import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.RemarkId;
import club.emberwell.remark.Unproven;
import java.util.function.Supplier;

/** Answers where the caller is known and only the password is at fault. */
final class Proofs {
  private Proofs() {}

  /** Does something; a wrong password is a fault at its field, not a missing sign-in. */
  static void at(String pointer, Runnable deed) {
    at(
        pointer,
        () -> {
          deed.run();
          return null;
        });
  }

  /** The same with what comes of it. */
  static <T> T at(String pointer, Supplier<T> deed) {
    try {
      return deed.get();
    } catch (Unproven e) {
      throw new EntryRefused(RemarkId.PASSWORD_WRONG, pointer, e.getMessage());
    }
  }
}
