package club.emberwell.keep;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalTime;
import java.util.List;
import java.util.Optional;

/**
 * How a club stands with backups: what pages, API, health and metrics say of it comes from here.
 *
 * @param all newest first
 */
public record BackupOverview(List<KnownBackup> all, Schedule schedule) {
  /** By the schedule one is made so often. */
  public static final Duration EVERY = Duration.ofDays(1);

  /** One may fail and be made up for before anybody is warned. */
  private static final Duration OLD = EVERY.multipliedBy(2);

  /** A file that its node has not seen for so long may be gone with it. */
  private static final Duration OUT_OF_SIGHT = EVERY;

  /**
   * What the operator has set.
   *
   * @param on whether the server makes one each day
   * @param at when, in UTC
   * @param keep how many stay in each folder of its own
   * @param place the folder that holds them all
   */
  public record Schedule(boolean on, LocalTime at, int keep, Path place) {}

  /** The newest one that can be counted on. */
  public Optional<KnownBackup> newest() {
    Instant since = Instant.now().minus(OUT_OF_SIGHT);
    return all.stream()
        .filter(one -> one.isGood() && one.file().seenAt().isAfter(since))
        .findFirst();
  }

  /** The one that is being made. */
  public Optional<KnownBackup> running() {
    return all.stream().filter(one -> one.state() == BackupState.RUNNING).findFirst();
  }

  /** Those that lie somewhere. */
  public List<KnownBackup> kept() {
    return all.stream().filter(KnownBackup::isKept).toList();
  }

  /** The last one that was begun, where it came to nothing. */
  public Optional<KnownBackup> failed() {
    return all.stream()
        .filter(one -> one.endedAt() != null)
        .max((a, b) -> a.endedAt().compareTo(b.endedAt()))
        .filter(one -> !one.isKept());
  }

  /** What somebody should be warned of, in a sentence. */
  public Optional<String> caution(Instant now) {
    Optional<Instant> made = newest().map(one -> one.file().madeAt());
    if (made.isEmpty()) {
      return Optional.of("There is no backup.");
    }
    Duration age = Duration.between(made.get(), now);
    return age.compareTo(OLD) > 0
        ? Optional.of("The newest backup is " + age.toDays() + " days old.")
        : Optional.empty();
  }
}
