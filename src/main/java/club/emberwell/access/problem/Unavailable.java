package club.emberwell.access.problem;

import java.sql.SQLException;
import java.util.Set;

/** Tells a database that is away, full or shutting down from a fault of ours. */
public final class Unavailable {
  /** SQLSTATE classes: connection exception, insufficient resources, operator intervention. */
  private static final Set<String> CLASSES = Set.of("08", "53", "57");

  private Unavailable() {}

  /** Looks through all causes. */
  public static boolean is(Throwable e) {
    for (Throwable cause = e; cause != null; cause = cause.getCause()) {
      if (cause instanceof SQLException sql) {
        String state = sql.getSQLState();
        // the pool itself gives no state when no connection was to be had in time
        return state == null || CLASSES.contains(state.substring(0, 2));
      }
    }
    return false;
  }
}
