package club.emberwell.desk;

import jakarta.persistence.Tuple;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.hibernate.Session;
import org.hibernate.query.CommonQueryContract;

/** Statements with named parameters, in the caller's transaction. */
abstract class SqlRepository {
  private final Session db;

  SqlRepository(Session db) {
    this.db = db;
  }

  /** For the container, which makes proxies. */
  SqlRepository() {
    this(null);
  }

  /** One row of an answer. */
  record Row(Tuple tuple) {
    String text(String column) {
      return tuple.get(column, String.class);
    }

    UUID uuid(String column) {
      return tuple.get(column, UUID.class);
    }

    Instant time(String column) {
      return tuple.get(column, Instant.class);
    }

    long number(String column) {
      return ((Number) tuple.get(column)).longValue();
    }

    Double decimal(String column) {
      Object value = tuple.get(column);
      return value == null ? null : ((Number) value).doubleValue();
    }

    boolean yes(String column) {
      return Boolean.TRUE.equals(tuple.get(column));
    }

    boolean has(String column) {
      return tuple.get(column) != null;
    }
  }

  /**
   * Rows of a query.
   *
   * @param parameters names and values by turns; a null counts as text, so cast it where needed
   */
  List<Row> rows(String sql, Object... parameters) {
    return bound(db.createNativeQuery(sql, Tuple.class), parameters)
        .getResultStream()
        .map(Row::new)
        .toList();
  }

  /** The one number a query answers. */
  long number(String sql, Object... parameters) {
    return rows(sql, parameters).get(0).number("n");
  }

  /** Changes rows; answers how many. */
  int write(String sql, Object... parameters) {
    return bound(db.createNativeMutationQuery(sql), parameters).executeUpdate();
  }

  /** What was changed through entities is seen by the next statement. */
  void flush() {
    db.flush();
  }

  private static <Q extends CommonQueryContract> Q bound(Q query, Object... parameters) {
    for (int i = 0; i < parameters.length; i += 2) {
      String name = (String) parameters[i];
      if (parameters[i + 1] == null) {
        query.setParameter(name, null, String.class);
      } else {
        query.setParameter(name, parameters[i + 1]);
      }
    }
    return query;
  }
}
