package club.emberwell.member;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Duration;
import java.util.Optional;
import java.util.UUID;

/** Lets features above hold back what is dear. Counted in the database, for all nodes together. */
@ApplicationScoped
public class Throttle {
  private final AttemptRepository attempts;
  private final WriteLimits limits;

  Throttle(AttemptRepository attempts, WriteLimits limits) {
    this.attempts = attempts;
    this.limits = limits;
  }

  /**
   * Counts one try.
   *
   * @param kind a fixed word for what is tried
   * @param subject who or what tries; stored as a hash
   * @return how long to wait where it is too early
   */
  public Optional<Duration> pause(String kind, String subject, Duration between) {
    return attempts.claim(kind, subject, new Pause(between));
  }

  /**
   * Counts one write of a member and of the address it came from.
   *
   * @return how long to wait where it is too early
   */
  public Optional<Duration> write(UUID member, String addressPrefix) {
    return attempts
        .claim("write", member.toString(), limits.account())
        .or(() -> attempts.claim("write-from", addressPrefix, limits.address()));
  }

  private record Pause(Duration between) implements MemberLimits.Rule {
    @Override
    public int free() {
      return 1;
    }

    @Override
    public Duration first() {
      return between;
    }

    @Override
    public Duration longest() {
      return between;
    }

    @Override
    public Duration window() {
      return between;
    }
  }
}
