package club.emberwell.keep;

import io.quarkus.scheduler.Scheduled;
import jakarta.enterprise.context.ApplicationScoped;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalTime;
import java.time.ZoneOffset;
import java.time.ZonedDateTime;
import java.util.List;
import java.util.Optional;

/** One backup a day by a running server, by whichever node comes first. */
@ApplicationScoped
public class ScheduledBackups {
  private static final Duration PAUSE = Duration.ofHours(1);

  private final Backups backups;
  private final BackupWork work;
  private final BackupSettings settings;

  ScheduledBackups(Backups backups, BackupWork work, BackupSettings settings) {
    this.backups = backups;
    this.work = work;
    this.settings = settings;
  }

  @Scheduled(every = "1m", delayed = "3m", concurrentExecution = Scheduled.ConcurrentExecution.SKIP)
  void look() {
    if (settings.scheduled()) {
      makeIfDue(Instant.now());
    }
  }

  /** Makes one where none was made since it was due, and no other node is at it. */
  Optional<Path> makeIfDue(Instant now) {
    return isDue(now)
        ? work.claim(BackupCause.SCHEDULE).flatMap(id -> work.make(id, BackupCause.SCHEDULE))
        : Optional.empty();
  }

  /** Where the last one failed, it is tried again after a pause. */
  private boolean isDue(Instant now) {
    Instant due = lastDue(now, settings.at());
    List<KnownBackup> mine =
        backups.overview().all().stream()
            .filter(one -> one.cause() == BackupCause.SCHEDULE)
            .toList();
    return mine.stream()
        .noneMatch(
            one ->
                one.isKept() && !one.file().madeAt().isBefore(due)
                    || one.state() == BackupState.FAILED
                        && one.endedAt().isAfter(now.minus(PAUSE)));
  }

  /** The last time of day before now at which one is to be made. */
  static Instant lastDue(Instant now, LocalTime at) {
    ZonedDateTime today = now.atZone(ZoneOffset.UTC).with(at);
    return (today.toInstant().isAfter(now) ? today.minusDays(1) : today).toInstant();
  }
}
