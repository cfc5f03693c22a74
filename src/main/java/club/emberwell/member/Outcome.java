package club.emberwell.member;

import club.emberwell.remark.Remark;
import java.time.Duration;
import java.util.List;

/** What came of an account action; bad input is an answer, not an exception. */
public sealed interface Outcome<T> {
  /** It was done. */
  record Done<T>(T value) implements Outcome<T> {}

  /** Fields are at fault; nothing was stored. */
  record Refused<T>(List<Remark> remarks) implements Outcome<T> {
    public Refused {
      remarks = List.copyOf(remarks);
    }
  }

  /** The password, or whatever else should prove the person, does not fit. */
  record Unproven<T>(String why) implements Outcome<T> {}

  /** The person is known but may not. */
  record Denied<T>(String why) implements Outcome<T> {}

  /** Too many tries; come back after the wait. */
  record Throttled<T>(Duration retryAfter) implements Outcome<T> {}

  static <T> Outcome<T> refused(Remark remark) {
    return new Refused<>(List.of(remark));
  }

  /** The same failure where another value was hoped for. */
  static <T> Outcome<T> recast(Outcome<?> failed) {
    if (failed instanceof Refused<?> r) {
      return new Refused<>(r.remarks());
    } else if (failed instanceof Unproven<?> u) {
      return new Unproven<>(u.why());
    } else if (failed instanceof Denied<?> d) {
      return new Denied<>(d.why());
    } else if (failed instanceof Throttled<?> t) {
      return new Throttled<>(t.retryAfter());
    }
    throw new IllegalArgumentException("this one succeeded");
  }
}
