package club.emberwell.launch;

import io.quarkus.arc.Arc;
import io.quarkus.hibernate.orm.PersistenceUnitExtension;
import io.quarkus.vertx.http.runtime.CurrentVertxRequest;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.hibernate.resource.jdbc.spi.StatementInspector;

/** What runs in the database for somebody; jobs in the background do not disturb it. */
@PersistenceUnitExtension
@ApplicationScoped
public class StatementCount implements StatementInspector {
  private static final ThreadLocal<List<String>> SEEN = new ThreadLocal<>();
  private static volatile List<String> seenForRequests;

  /** What a node reads once in a few seconds for all that ask meanwhile; it belongs to no page. */
  private static final String READ_FOR_ALL = "select key, value from club_option";

  @Override
  public String inspect(String sql) {
    List<String> seen = SEEN.get();
    if (seen != null) {
      seen.add(sql);
    }
    List<String> requests = seenForRequests;
    if (requests != null && servesARequest() && !sql.strip().startsWith(READ_FOR_ALL)) {
      requests.add(sql);
    }
    return sql;
  }

  private static boolean servesARequest() {
    return Arc.container().requestContext().isActive()
        && Arc.container().select(CurrentVertxRequest.class).get().getCurrent() != null;
  }

  /** The statements a piece of work takes on the calling thread. */
  public static List<String> of(Runnable work) {
    SEEN.set(new ArrayList<>());
    try {
      work.run();
      return SEEN.get();
    } finally {
      SEEN.remove();
    }
  }

  /** The statements that requests take which are sent and answered meanwhile. */
  public static List<String> ofRequests(Runnable work) {
    List<String> seen = Collections.synchronizedList(new ArrayList<>());
    seenForRequests = seen;
    try {
      work.run();
      return List.copyOf(seen);
    } finally {
      seenForRequests = null;
    }
  }
}
