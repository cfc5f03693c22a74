package club.emberwell.exchange.example;

import club.emberwell.exchange.Eraser;
import club.emberwell.exchange.ScenarioLoader;
import club.emberwell.exchange.example.ExampleRepository.Row;
import club.emberwell.member.club.ClubOptions;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.runtime.ShutdownEvent;
import io.quarkus.scheduler.Scheduled;
import io.quarkus.scheduler.Scheduled.ConcurrentExecution;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.jboss.logging.Logger;

/**
 * Brings the example and takes it away again, in small transactions beside the pages. One node does
 * it at a time; where one stops, the next begins where that was.
 */
@ApplicationScoped
public class ExampleWork {
  private static final Logger LOG = Logger.getLogger(ExampleWork.class);

  /** A node that is silent for so long has stopped. */
  private static final Duration TURN = Duration.ofMinutes(3);

  private final ExampleRepository rows;
  private final ScenarioLoader loader;
  private final Eraser eraser;
  private final ClubOptions club;
  private final String scenario;
  private volatile boolean stopping;

  ExampleWork(
      ExampleRepository rows,
      ScenarioLoader loader,
      Eraser eraser,
      ClubOptions club,
      @ConfigProperty(name = "emberwell.example") String scenario) {
    this.rows = rows;
    this.loader = loader;
    this.eraser = eraser;
    this.club = club;
    this.scenario = scenario;
  }

  @Scheduled(every = "5s", delayed = "5s", concurrentExecution = ConcurrentExecution.SKIP)
  void look() {
    try {
      while (!stopping && step()) {
        LOG.debug("the example changed its direction meanwhile");
      }
    } catch (RuntimeException e) {
      if (stopping) {
        LOG.debug("example club: the work broke off with the server", e);
      } else {
        LOG.error("example club: the work broke off; it goes on in some minutes", e);
      }
    }
  }

  void stop(@Observes ShutdownEvent told) {
    stopping = true;
  }

  /**
   * Does what is wished right now, to its end.
   *
   * @return whether there was anything to do
   */
  public boolean step() {
    Optional<Row> mine =
        QuarkusTransaction.requiringNew().call(() -> rows.claim(Instant.now(), TURN));
    mine.ifPresent(
        row -> {
          if (row.state().equals("loading")) {
            load(row);
          } else {
            remove(row);
          }
        });
    return mine.isPresent();
  }

  private void load(Row row) {
    try {
      loader.load(
          scenario,
          new ExampleGuise(row.run(), rows::invent, (done, total) -> advance(row, done, total)));
      QuarkusTransaction.requiringNew().call(() -> rows.complete(row));
    } catch (WishChanged e) {
      LOG.info("example club: it is to go before it was whole");
    }
    QuarkusTransaction.requiringNew().run(rows::release);
  }

  private void advance(Row row, int done, int total) {
    if (!QuarkusTransaction.requiringNew()
        .call(() -> rows.advance(row, done, total, Instant.now().plus(TURN)))) {
      throw new WishChanged();
    }
  }

  private void remove(Row row) {
    List<UUID> invented = QuarkusTransaction.requiringNew().call(rows::invented);
    for (UUID member : invented) {
      eraser.forgetInvented(member);
      int left = QuarkusTransaction.requiringNew().call(rows::invented).size();
      advance(row, Math.max(0, row.total() - left), row.total());
    }
    QuarkusTransaction.requiringNew()
        .run(
            () -> {
              rows.delete(row);
              club.example(false);
            });
    LOG.infof("example club: removed, with %d invented members", invented.size());
  }

  /** Somebody wished otherwise while it was coming. */
  private static final class WishChanged extends RuntimeException {
    private static final long serialVersionUID = 1L;
  }
}
