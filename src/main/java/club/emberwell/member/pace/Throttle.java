package club.emberwell.member.pace;

import club.emberwell.remark.TooManyTries;
import io.quarkus.scheduler.Scheduled;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Duration;
import java.util.Optional;
import java.util.UUID;

/** Holds back what comes too often. Counted in the database, for all nodes together. */
@ApplicationScoped
public class Throttle {
  private final AttemptRepository attempts;
  private final WriteLimits limits;

  Throttle(AttemptRepository attempts, WriteLimits limits) {
    this.attempts = attempts;
    this.limits = limits;
  }

  /**
   * Counts one try, committed whatever happens afterwards.
   *
   * @param kind a fixed word for what is tried
   * @param subject who or what tries; stored as a hash
   * @throws TooManyTries where it is too early
   */
  public void claim(String kind, String subject, Pace pace) {
    Optional<Duration> wait = attempts.claim(kind, subject, pace);
    if (wait.isPresent()) {
      throw new TooManyTries(wait.get());
    }
  }

  /** The same for what has one pause between two. */
  public void pause(String kind, String subject, Duration between) {
    claim(kind, subject, Pace.every(between));
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

  /** Takes one try back: it turned out to be a right one. */
  public void giveBack(String kind, String subject) {
    attempts.giveBack(kind, subject);
  }

  /** Forgets what was counted, after the right password. */
  public void forget(String kind, String subject) {
    attempts.forget(kind, subject);
  }

  /** Forgets whatever was counted for somebody who is gone, in the caller's transaction. */
  public void forgetSubject(String subject) {
    attempts.forgetSubject(subject);
  }

  /** Removes counts that are over. */
  @Scheduled(every = "1h", delayed = "3m")
  @Transactional
  void sweep() {
    attempts.sweep();
  }
}
