package club.emberwell.keep;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.runtime.ShutdownEvent;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.ScheduledFuture;
import java.util.concurrent.TimeUnit;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.jboss.logging.Logger;

/**
 * Makes and tries backups beside the requests, on a thread of its own: whoever asks is answered at
 * once. All nodes together make one at a time and try one at a time.
 */
@ApplicationScoped
public class BackupWork {
  private static final Logger LOG = Logger.getLogger(BackupWork.class);

  /** Often enough that a late one or two kill nobody. */
  private static final Duration BEAT = StoredBackups.SILENCE.dividedBy(6);

  private static final String OWN_FAULT = "It broke off by an error of our own; the log has more.";

  private final StoredBackups rows;
  private final BackupFolders folders;
  private final BackupSettings settings;
  private final DatabaseLogin database;
  private final Backup backup;
  private final ExecutorService worker = Executors.newSingleThreadExecutor(BackupWork::thread);
  private final ScheduledExecutorService clock =
      Executors.newSingleThreadScheduledExecutor(BackupWork::thread);
  private volatile UUID making;

  BackupWork(
      StoredBackups rows,
      BackupFolders folders,
      BackupSettings settings,
      @ConfigProperty(name = "quarkus.datasource.jdbc.url") String url,
      @ConfigProperty(name = "quarkus.datasource.username") Optional<String> user,
      @ConfigProperty(name = "quarkus.datasource.password") Optional<String> password,
      @ConfigProperty(name = "quarkus.application.version") String version,
      @ConfigProperty(name = "emberwell.data.signing-key") Path signingKey) {
    this.rows = rows;
    this.folders = folders;
    this.settings = settings;
    database = new DatabaseLogin(url, user.orElse(""), password.orElse(""));
    backup = new Backup(database, version, Map.of("data-signing-key.pem", signingKey), line -> {});
  }

  private static Thread thread(Runnable task) {
    Thread thread = new Thread(task, "backups");
    thread.setDaemon(true);
    return thread;
  }

  /** Takes the turn to make one, for all nodes; empty while one is being made. */
  public Optional<UUID> claim(BackupCause cause) {
    UUID id = UUID.randomUUID();
    return QuarkusTransaction.requiringNew().call(() -> rows.begin(id, cause, folders.node()))
        ? Optional.of(id)
        : Optional.empty();
  }

  /** Makes the one whose turn was taken, in the background. */
  public void begin(UUID claimed, BackupCause cause) {
    worker.execute(() -> make(claimed, cause));
  }

  /** Takes the turn to try one that lies here; false while one is tried on whatever node. */
  public boolean claimTrial(UUID id) {
    return QuarkusTransaction.requiringNew().call(() -> rows.beginTrial(id));
  }

  /** Tries the one whose turn was taken, in the background. */
  public void beginTrial(UUID claimed, Path file) {
    worker.execute(() -> attempt(claimed, file));
  }

  /** Makes the one whose turn was taken; empty where it fails, which is said of it. */
  Optional<Path> make(UUID claimed, BackupCause cause) {
    making = claimed;
    ScheduledFuture<?> beats = beat(claimed);
    try {
      return Optional.of(made(claimed, cause));
    } catch (KeepRefused | IOException e) {
      LOG.errorf("No backup was made: %s", e.getMessage());
      over(claimed, BackupState.FAILED, e.getMessage());
    } catch (RuntimeException e) {
      LOG.error("No backup was made", e);
      over(claimed, BackupState.FAILED, OWN_FAULT);
    } finally {
      making = null;
      beats.cancel(false);
    }
    return Optional.empty();
  }

  private Path made(UUID claimed, BackupCause cause) throws IOException {
    Path folder = folders.folder(cause);
    if (cause == BackupCause.BY_HAND) {
      // nobody may fill the disk by pressing a button
      backup.requireRoom(folder);
    }
    Backup.Done done = backup.into(folder, cause);
    KnownBackup.ArchiveFile file =
        BackupFolders.archive(done.file(), done.manifest(), Instant.now());
    QuarkusTransaction.requiringNew().run(() -> rows.kept(claimed, file));
    LOG.infof("Made the backup %s, %,d rows", done.file(), done.manifest().rows());
    BackupFolders.dropOldest(folder, settings.keep());
    folders.look();
    return done.file();
  }

  private void over(UUID claimed, BackupState state, String why) {
    QuarkusTransaction.requiringNew().run(() -> rows.over(claimed, state, why));
  }

  /** Tries the one whose turn was taken. */
  void attempt(UUID claimed, Path file) {
    ScheduledFuture<?> beats = beat(claimed);
    Trial trial = tried(file);
    beats.cancel(false);
    LOG.infof("Verified the backup %s: %s", file, trial.outcome().code());
    QuarkusTransaction.requiringNew().run(() -> rows.tried(claimed, trial));
  }

  private Trial tried(Path file) {
    try (Archive archive = Archive.open(file)) {
      new Restore(database, new Restore.Wishes(false, false, List.of()), line -> {})
          .rehearse(archive);
      return new Trial(Trial.Outcome.GOOD, Instant.now(), null);
    } catch (KeepRefused e) {
      LOG.warnf("The backup %s was not brought back: %s", file, e.getMessage());
      return new Trial(Trial.outcome(e), Instant.now(), e.getMessage());
    } catch (RuntimeException e) {
      LOG.error("A backup was not brought back", e);
      return new Trial(Trial.Outcome.FAILED, Instant.now(), OWN_FAULT);
    }
  }

  /** Says every while that it goes on, so that no node takes this one for dead. */
  private ScheduledFuture<?> beat(UUID claimed) {
    return clock.scheduleAtFixedRate(
        () -> sayThatItGoesOn(claimed), BEAT.toSeconds(), BEAT.toSeconds(), TimeUnit.SECONDS);
  }

  private void sayThatItGoesOn(UUID claimed) {
    try {
      QuarkusTransaction.requiringNew().run(() -> rows.goesOn(claimed));
    } catch (RuntimeException e) {
      LOG.debug("the database does not answer while a backup is worked at", e);
    }
  }

  /** One that is under way ends with the server, and says so. */
  void stop(@Observes ShutdownEvent stopping) {
    UUID ended = making;
    if (ended != null) {
      try {
        over(ended, BackupState.DIED, StoredBackups.DIED);
      } catch (RuntimeException e) {
        LOG.debug("the database does not answer any more", e);
      }
    }
    worker.shutdownNow();
    clock.shutdownNow();
  }
}
