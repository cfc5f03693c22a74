package club.emberwell.access.problem;

import java.io.IOException;
import java.sql.SQLException;
import java.util.Set;

/** Tells a database that is away, full or shutting down from a fault of ours. */
public final class Unavailable {
  /** SQLSTATE classes: connection exception, insufficient resources, operator intervention. */
  private static final Set<String> CLASSES = Set.of("08", "53", "57");

  private static final String DISK_FULL = "53100";

  /** As the operating system says it (ENOSPC); Java has no exception of its own for it. */
  private static final String NO_SPACE = "No space left on device";

  private Unavailable() {}

  /** Whether it is the room on a disk that is missing, of the database or of ours. */
  public static boolean isFull(Throwable e) {
    for (Throwable cause = e; cause != null; cause = cause.getCause()) {
      if (cause instanceof SQLException sql && DISK_FULL.equals(sql.getSQLState())
          || cause instanceof IOException io
              && io.getMessage() != null
              && io.getMessage().contains(NO_SPACE)) {
        return true;
      }
    }
    return false;
  }

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
