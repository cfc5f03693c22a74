package club.emberwell.access.problem;

import java.io.IOException;
import java.sql.SQLException;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.Set;
import java.util.stream.Stream;

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
    return behind(e)
        .anyMatch(
            each ->
                each instanceof SQLException sql && DISK_FULL.equals(sql.getSQLState())
                    || each instanceof IOException io
                        && io.getMessage() != null
                        && io.getMessage().contains(NO_SPACE));
  }

  /** By the first failure of the database that is behind it. */
  public static boolean is(Throwable e) {
    return behind(e)
        .filter(SQLException.class::isInstance)
        .map(SQLException.class::cast)
        .findFirst()
        .map(Unavailable::isAway)
        .orElse(false);
  }

  private static boolean isAway(SQLException e) {
    String state = e.getSQLState();
    // the pool itself gives no state when no connection was to be had in time
    return state == null || CLASSES.contains(state.substring(0, 2));
  }

  /** With all causes, and what transactions that could not be committed were ended by. */
  private static Stream<Throwable> behind(Throwable e) {
    Set<Throwable> seen = Collections.newSetFromMap(new IdentityHashMap<>());
    return behind(e, seen);
  }

  private static Stream<Throwable> behind(Throwable e, Set<Throwable> seen) {
    if (e == null || !seen.add(e)) {
      return Stream.empty();
    }
    return Stream.of(
            Stream.of(e),
            behind(e.getCause(), seen),
            Stream.of(e.getSuppressed()).flatMap(each -> behind(each, seen)))
        .flatMap(each -> each);
  }
}
