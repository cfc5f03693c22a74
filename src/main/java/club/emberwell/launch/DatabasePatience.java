package club.emberwell.launch;

import club.emberwell.access.traffic.OpenRequests;
import io.agroal.api.AgroalPoolInterceptor;
import io.quarkus.runtime.StartupEvent;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Duration;
import org.jboss.logging.Logger;

/**
 * Gives each use of a connection the patience it needs. A timeout of statements would not do: the
 * server keeps it, and a server that stands still ends nothing.
 */
@ApplicationScoped
class DatabasePatience implements AgroalPoolInterceptor {
  private static final Logger LOG = Logger.getLogger(DatabasePatience.class);

  private final DatabaseTimes times;
  private volatile boolean started;

  DatabasePatience(DatabaseTimes times) {
    this.times = times;
  }

  void started(@Observes StartupEvent event) {
    started = true;
  }

  @Override
  public void onConnectionCreate(Connection connection) {
    String check = "SET client_connection_check_interval = " + times.abandoned().toMillis();
    try (Statement statement = connection.createStatement()) {
      statement.execute(check);
    } catch (SQLException e) {
      // some systems cannot look whether the other side is there
      LOG.debugf("statements nobody waits for run to their end: %s", e.getMessage());
    }
  }

  @Override
  public void onConnectionAcquire(Connection connection) {
    if (OpenRequests.isInRequest()) {
      wait(connection, times.request());
    } else {
      wait(connection, started ? times.background() : times.start());
    }
  }

  /** Idle connections are looked at before they are given out. */
  @Override
  public void onConnectionReturn(Connection connection) {
    wait(connection, times.idle());
  }

  static void wait(Connection connection, Duration most) {
    try {
      connection.setNetworkTimeout(Runnable::run, (int) most.toMillis());
    } catch (SQLException e) {
      LOG.debugf("a connection is gone: %s", e.getMessage());
    }
  }
}
