package club.emberwell.desk;

import club.emberwell.entry.Entry;
import club.emberwell.entry.EntryKind;
import club.emberwell.entry.EntryRef;
import club.emberwell.entry.EntryState;
import jakarta.persistence.Tuple;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.hibernate.Session;
import org.hibernate.query.CommonQueryContract;

/** Statements with named parameters, in the caller's transaction. */
public abstract class SqlRepository {
  /** What {@link Row#entry} reads, of an entry e and its author a. */
  protected static final String ENTRY =
      " e.kind as kind, e.id as id, e.member_id as author, e.title as title, e.state as state,"
          + " e.version as version, e.created_at as created_at, e.updated_at as updated_at,"
          + " e.parent_id as parent,"
          + " case when a.status = 'erased' then 'former member' else a.handle end as handle ";

  protected static final String OF_AUTHOR = " join member a on a.id = e.member_id ";

  private final Session db;

  protected SqlRepository(Session db) {
    this.db = db;
  }

  /** For the container, which makes proxies. */
  protected SqlRepository() {
    this(null);
  }

  /** One row of an answer. */
  public record Row(Tuple tuple) {
    public String text(String column) {
      return tuple.get(column, String.class);
    }

    public UUID uuid(String column) {
      return tuple.get(column, UUID.class);
    }

    public Instant time(String column) {
      return tuple.get(column, Instant.class);
    }

    public long number(String column) {
      return ((Number) tuple.get(column)).longValue();
    }

    public Double decimal(String column) {
      Object value = tuple.get(column);
      return value == null ? null : ((Number) value).doubleValue();
    }

    public boolean yes(String column) {
      return Boolean.TRUE.equals(tuple.get(column));
    }

    public Entry entry() {
      return new Entry(
          new EntryRef(EntryKind.of(text("kind")).orElseThrow(), uuid("id")),
          state(text("state")),
          (int) number("version"),
          uuid("parent"),
          text("title"),
          new Entry.Author(uuid("author"), text("handle")),
          new Entry.Times(time("created_at"), time("updated_at")));
    }

    private static EntryState state(String code) {
      return EntryState.of(code).orElseThrow();
    }

    public boolean has(String column) {
      return tuple.get(column) != null;
    }
  }

  /**
   * Rows of a query.
   *
   * @param parameters names and values by turns; a null counts as text, so cast it where needed
   */
  protected List<Row> rows(String sql, Object... parameters) {
    return bound(db.createNativeQuery(sql, Tuple.class), parameters)
        .getResultStream()
        .map(Row::new)
        .toList();
  }

  /** The one number a query answers. */
  protected long number(String sql, Object... parameters) {
    return rows(sql, parameters).get(0).number("n");
  }

  /** Changes rows; answers how many. */
  protected int write(String sql, Object... parameters) {
    return bound(db.createNativeMutationQuery(sql), parameters).executeUpdate();
  }

  /** What was changed through entities is seen by the next statement. */
  protected void flush() {
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
