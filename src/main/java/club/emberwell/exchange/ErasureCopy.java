package club.emberwell.exchange;

import club.emberwell.keep.Erased;
import club.emberwell.keep.ErasedFile;
import io.quarkus.runtime.StartupEvent;
import io.quarkus.scheduler.Scheduled;
import jakarta.annotation.Priority;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.jboss.logging.Logger;

/**
 * The erasure ledger once more in the home of every node: where the database is lost, a restored
 * backup still learns from it who left.
 */
@ApplicationScoped
class ErasureCopy {
  private static final Logger LOG = Logger.getLogger(ErasureCopy.class);

  /** Behind the ledger's own start, which enters nobody but may find somebody to forget. */
  private static final int LAST = 5000;

  private final ErasureLedger ledger;
  private final ErasedFile file;

  ErasureCopy(ErasureLedger ledger, @ConfigProperty(name = "emberwell.home") Path home) {
    this.ledger = ledger;
    this.file = ErasedFile.of(home);
  }

  void atStart(@Observes @Priority(LAST) StartupEvent started) {
    copy();
  }

  /** Copies what is missing. */
  @Scheduled(every = "1m", delayed = "1m", concurrentExecution = Scheduled.ConcurrentExecution.SKIP)
  void copy() {
    List<Erased> entries =
        ledger.entries().stream()
            .map(entry -> new Erased(entry.member(), entry.choice().code(), entry.at()))
            .toList();
    try {
      file.add(entries);
    } catch (IOException e) {
      LOG.errorf("Who left cannot be written to %s: %s", file.file(), e.getMessage());
    }
  }
}
