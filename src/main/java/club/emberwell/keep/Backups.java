package club.emberwell.keep;

import club.emberwell.keep.BackupOverview.Schedule;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.runtime.StartupEvent;
import io.quarkus.scheduler.Scheduled;
import jakarta.annotation.Priority;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.interceptor.Interceptor;
import java.io.IOException;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jboss.logging.Logger;

/** The backups of the club, on whatever node. */
@ApplicationScoped
public class Backups {
  private static final Logger LOG = Logger.getLogger(Backups.class);

  private final StoredBackups rows;
  private final BackupFolders folders;
  private final BackupSettings settings;

  Backups(StoredBackups rows, BackupFolders folders, BackupSettings settings) {
    this.rows = rows;
    this.folders = folders;
    this.settings = settings;
  }

  /** How the club stands with them. */
  public BackupOverview overview() {
    List<KnownBackup> all = QuarkusTransaction.requiringNew().call(rows::all);
    return new BackupOverview(
        all, new Schedule(settings.scheduled(), settings.at(), settings.keep(), settings.dir()));
  }

  /** One of them; empty where it is not known, or not any more. */
  public Optional<KnownBackup> byId(UUID id) {
    return overview().all().stream().filter(one -> one.id().equals(id)).findFirst();
  }

  /** Before anybody asks how the club stands with them. */
  void begin(@Observes @Priority(Interceptor.Priority.LIBRARY_BEFORE) StartupEvent started) {
    look();
  }

  /** Looks which lie on this node. */
  @Scheduled(every = "1m", concurrentExecution = Scheduled.ConcurrentExecution.SKIP)
  public void look() {
    try {
      folders.look();
    } catch (IOException e) {
      LOG.warnf("Which backups lie here cannot be seen: %s", e.getMessage());
    }
  }
}
