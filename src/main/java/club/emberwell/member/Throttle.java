package club.emberwell.member;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Duration;
import java.util.Optional;

/** Lets features above hold back what is dear. Counted in the database, for all nodes together. */
@ApplicationScoped
public class Throttle {
  private final AttemptRepository attempts;

  Throttle(AttemptRepository attempts) {
    this.attempts = attempts;
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
