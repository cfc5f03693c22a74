package club.emberwell.launch;

import io.quarkus.hibernate.orm.PersistenceUnitExtension;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.ArrayList;
import java.util.List;
import org.hibernate.resource.jdbc.spi.StatementInspector;

/** What runs in the database for the calling thread; jobs in the background do not disturb it. */
@PersistenceUnitExtension
@ApplicationScoped
public class StatementCount implements StatementInspector {
  private static final ThreadLocal<List<String>> SEEN = new ThreadLocal<>();

  @Override
  public String inspect(String sql) {
    List<String> seen = SEEN.get();
    if (seen != null) {
      seen.add(sql);
    }
    return sql;
  }

  /** The statements a piece of work takes. */
  public static List<String> of(Runnable work) {
    SEEN.set(new ArrayList<>());
    try {
      work.run();
      return SEEN.get();
    } finally {
      SEEN.remove();
    }
  }
}
