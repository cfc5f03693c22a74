package club.emberwell.exchange.open;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.scheduler.Scheduled;
import io.quarkus.scheduler.Scheduled.ConcurrentExecution;
import jakarta.enterprise.context.ApplicationScoped;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.ZonedDateTime;
import java.time.temporal.ChronoUnit;
import java.util.Optional;
import java.util.UUID;
import org.jboss.logging.Logger;

/**
 * Makes the package: by night, when an owner or the command line asks, and as soon as the last one
 * holds what was taken back since. One node does it, and the package appears in one transaction.
 */
@ApplicationScoped
public class PackageMaker {
  /** Whatever was taken back is out of the data after so long at the latest. */
  public static final Duration OUT_WITHIN = Duration.ofMinutes(15);

  /** UTC. */
  private static final int NIGHT_HOUR = 3;

  /** A node that takes longer gives up, and another may begin. */
  static final Duration MOST = Duration.ofMinutes(10);

  private static final int PART = 1 << 20;
  private static final Logger LOG = Logger.getLogger(PackageMaker.class);

  private final DataPackageRepository rows;
  private final PackageWriter writer;
  private final PackageShelf shelf;

  PackageMaker(DataPackageRepository rows, PackageWriter writer, PackageShelf shelf) {
    this.rows = rows;
    this.writer = writer;
    this.shelf = shelf;
  }

  /** The newest package; empty where none was made yet. */
  public Optional<DataPackage> newest() {
    return QuarkusTransaction.requiringNew().call(rows::newest);
  }

  /** Wants a new one: some node begins within moments. */
  public void ask() {
    QuarkusTransaction.requiringNew().run(rows::ask);
  }

  @Scheduled(
      every = "${emberwell.data.every}",
      delayed = "20s",
      concurrentExecution = ConcurrentExecution.SKIP)
  void look() {
    try {
      makeIfDue();
    } catch (RuntimeException e) {
      LOG.warn("the data could not be made; it is tried again", e);
    }
  }

  /** Makes a package where one is due and no other node is at it. */
  public void makeIfDue() {
    long seen = QuarkusTransaction.requiringNew().call(rows::seen);
    boolean stale = QuarkusTransaction.requiringNew().call(rows::isStale);
    if (!stale && !isDue()) {
      QuarkusTransaction.requiringNew().run(() -> rows.lookedAtTo(seen));
      return;
    }
    try {
      make();
    } catch (RuntimeException e) {
      if (stale) {
        // better no data than somebody's who took theirs back
        QuarkusTransaction.requiringNew().run(() -> rows.deleteAllBut(null));
      }
      throw e;
    }
  }

  private boolean isDue() {
    ZonedDateTime now = ZonedDateTime.now(ZoneOffset.UTC);
    ZonedDateTime night = now.truncatedTo(ChronoUnit.DAYS).plusHours(NIGHT_HOUR);
    Instant last = (night.isAfter(now) ? night.minusDays(1) : night).toInstant();
    return QuarkusTransaction.requiringNew()
        .call(
            () -> {
              Optional<DataPackage> made = rows.newest().filter(p -> p.madeAt().isAfter(last));
              boolean first = made.filter(p -> p.counts().trials() == 0).isPresent();
              return made.isEmpty() || rows.isAsked() || first && rows.isAnythingLive();
            });
  }

  /** Makes a package now; empty while another node is at it. */
  public Optional<DataPackage> make() {
    UUID turn = UUID.randomUUID();
    if (!QuarkusTransaction.requiringNew().call(() -> rows.claim(turn, MOST))) {
      return Optional.empty();
    }
    try {
      return Optional.of(written(turn, Instant.now().plus(MOST)));
    } finally {
      QuarkusTransaction.requiringNew().run(() -> rows.release(turn));
    }
  }

  private DataPackage written(UUID turn, Instant late) {
    try {
      Path folder = shelf.workplace(turn);
      try {
        long seen = QuarkusTransaction.requiringNew().call(rows::seen);
        DataPackage made = writer.write(folder, late);
        QuarkusTransaction.requiringNew()
            .timeout((int) MOST.toSeconds())
            .run(() -> store(made, seen, folder.resolve(PackageWriter.ZIP), turn));
        return made;
      } finally {
        PackageShelf.remove(folder);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private void store(DataPackage made, long seen, Path zip, UUID turn) {
    if (!rows.release(turn)) {
      throw new IllegalStateException("another node began to make the data meanwhile");
    }
    rows.add(made, seen);
    try (InputStream in = Files.newInputStream(zip)) {
      int position = 0;
      for (byte[] part = in.readNBytes(PART); part.length > 0; part = in.readNBytes(PART)) {
        rows.addPart(made.id(), position++, part);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    rows.deleteAllBut(made.id());
  }
}
