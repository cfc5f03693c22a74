package club.emberwell.launch;

import io.agroal.api.AgroalDataSource;
import io.agroal.api.AgroalDataSource.FlushMode;
import io.quarkus.runtime.ShutdownEvent;
import io.quarkus.runtime.StartupEvent;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import org.jboss.logging.Logger;

/**
 * Once one connection that lay idle turns out to be dead, all that lie idle are dropped. The pool
 * would try one after the other, and each waits its time: who asks would wait for all of them.
 */
@ApplicationScoped
class StaleConnections {
  private static final Logger LOG = Logger.getLogger(StaleConnections.class);
  private static final long LOOK_MILLIS = 200;

  private final AgroalDataSource pool;
  private final ScheduledExecutorService looks =
      Executors.newSingleThreadScheduledExecutor(
          look -> {
            Thread thread = new Thread(look, "stale-connections");
            thread.setDaemon(true);
            return thread;
          });

  private long dead;

  StaleConnections(AgroalDataSource pool) {
    this.pool = pool;
  }

  void begin(@Observes StartupEvent started) {
    looks.scheduleWithFixedDelay(this::look, LOOK_MILLIS, LOOK_MILLIS, TimeUnit.MILLISECONDS);
  }

  void end(@Observes ShutdownEvent stopping) {
    looks.shutdownNow();
  }

  private void look() {
    try {
      dropIdle();
    } catch (RuntimeException e) {
      // whatever it was, the next look comes
      LOG.debugf(e, "connections could not be looked at");
    }
  }

  private void dropIdle() {
    long now = pool.getMetrics().invalidCount();
    if (now > dead) {
      LOG.debugf("%d connections to the database were dead; idle ones are dropped", now - dead);
      pool.flush(FlushMode.IDLE);
    }
    dead = now;
  }
}
