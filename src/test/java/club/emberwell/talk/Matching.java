package club.emberwell.talk;

import static org.awaitility.Awaitility.await;

import club.emberwell.talk.watch.WatchMatcher;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.runtime.StartupEvent;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.persistence.EntityManager;
import java.time.Duration;

/** Holds what was written against the watches: nothing does so by itself in tests. */
@ApplicationScoped
public class Matching {
  private static final Duration PATIENCE = Duration.ofSeconds(30);
  private static final Duration PAUSE = Duration.ofMillis(10);

  private final EntityManager db;
  private final WatchMatcher matcher;

  Matching(EntityManager db, WatchMatcher matcher) {
    this.db = db;
    this.matcher = matcher;
  }

  /** As at every server's start: what there is already is no news. */
  void begin(@Observes StartupEvent started) {
    matcher.matchSome();
  }

  /** Until all is seen that was committed: what else runs in the server may hold changes back. */
  public void catchUp() {
    await().atMost(PATIENCE).pollDelay(Duration.ZERO).pollInterval(PAUSE).until(this::done);
  }

  private boolean done() {
    boolean more = true;
    while (more) {
      more = matcher.matchSome();
    }
    return QuarkusTransaction.requiringNew().call(this::unseen) == 0;
  }

  private long unseen() {
    Object count =
        db.createNativeQuery(
                """
                select count(*)
                  from change_row c, change_reader p
                 where p.name = 'watches'
                   and (cast(cast(c.xid as text) as bigint), c.seq) > (p.xid, p.seq)""",
                Long.class)
            .getSingleResult();
    return (Long) count;
  }
}
