package club.emberwell.keep;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.scheduler.Scheduled;
import jakarta.enterprise.context.ApplicationScoped;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalTime;
import java.time.ZoneOffset;
import java.time.ZonedDateTime;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.jboss.logging.Logger;

/** One backup a day by a running server, by whichever node comes first. */
@ApplicationScoped
public class ScheduledBackups {
  private static final Logger LOG = Logger.getLogger(ScheduledBackups.class);

  /** A node that takes longer is thought dead. */
  private static final Duration MOST = Duration.ofHours(6);

  private static final Duration PAUSE = Duration.ofHours(1);

  private final StoredMaking rows;
  private final BackupSettings settings;
  private final Backup backup;

  ScheduledBackups(
      StoredMaking rows,
      BackupSettings settings,
      @ConfigProperty(name = "quarkus.datasource.jdbc.url") String url,
      @ConfigProperty(name = "quarkus.datasource.username") Optional<String> user,
      @ConfigProperty(name = "quarkus.datasource.password") Optional<String> password,
      @ConfigProperty(name = "quarkus.application.version") String version,
      @ConfigProperty(name = "emberwell.data.signing-key") Path signingKey) {
    this.rows = rows;
    this.settings = settings;
    this.backup =
        new Backup(
            new DatabaseLogin(url, user.orElse(""), password.orElse("")),
            version,
            Map.of("data-signing-key.pem", signingKey),
            line -> {});
  }

  /** When the newest was made, by whichever node. */
  public Optional<Instant> madeAt() {
    return QuarkusTransaction.requiringNew().call(rows::madeAt);
  }

  /** Why the last one was not made; empty: it was. */
  public Optional<String> failure() {
    return QuarkusTransaction.requiringNew().call(rows::failure);
  }

  @Scheduled(every = "1m", delayed = "3m", concurrentExecution = Scheduled.ConcurrentExecution.SKIP)
  void look() {
    if (settings.scheduled()) {
      makeIfDue(Instant.now());
    }
  }

  /** Makes one where none was made since it was due, and no other node is at it. */
  Optional<Path> makeIfDue(Instant now) {
    UUID turn = UUID.randomUUID();
    Instant due = lastDue(now, settings.at());
    if (!QuarkusTransaction.requiringNew().call(() -> rows.claim(turn, due, MOST))) {
      return Optional.empty();
    }
    try {
      return Optional.of(make(turn));
    } catch (KeepRefused | IOException e) {
      LOG.errorf("No backup was made, it is tried again in an hour: %s", e.getMessage());
      QuarkusTransaction.requiringNew().run(() -> rows.failed(turn, e.getMessage(), PAUSE));
      return Optional.empty();
    }
  }

  private Path make(UUID turn) throws IOException {
    Path folder = settings.dir().resolve("scheduled");
    Backup.Done done = backup.into(folder);
    long size = Files.size(done.file());
    QuarkusTransaction.requiringNew()
        .run(() -> rows.done(turn, done.manifest().at(), done.file().toString(), size));
    LOG.infof("Made the backup %s, %,d rows", done.file(), done.manifest().rows());
    dropOldest(folder, settings.keep());
    return done.file();
  }

  /** The last time of day before now at which one is to be made. */
  static Instant lastDue(Instant now, LocalTime at) {
    ZonedDateTime today = now.atZone(ZoneOffset.UTC).with(at);
    return (today.toInstant().isAfter(now) ? today.minusDays(1) : today).toInstant();
  }

  /** Drops all but the newest ones, by the time in their names, and what was never finished. */
  static void dropOldest(Path folder, int keep) throws IOException {
    List<Path> newestFirst;
    try (Stream<Path> files = Files.list(folder)) {
      newestFirst =
          files
              .filter(file -> Backup.isName(file.getFileName().toString()))
              .sorted(Comparator.comparing(Backup::time).reversed())
              .toList();
    }
    for (Path old :
        newestFirst.subList(Math.min(Math.max(keep, 1), newestFirst.size()), newestFirst.size())) {
      Files.delete(old);
    }
    try (Stream<Path> files = Files.list(folder)) {
      for (Path half : files.filter(file -> file.toString().endsWith(".half")).toList()) {
        Files.delete(half);
      }
    }
  }
}
