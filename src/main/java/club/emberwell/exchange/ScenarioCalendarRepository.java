package club.emberwell.exchange;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.UUID;
import org.hibernate.Session;

/** Puts what has no date of its own on its way in onto the calendar of the invented club. */
@ApplicationScoped
class ScenarioCalendarRepository {
  private final Session db;

  ScenarioCalendarRepository(Session db) {
    this.db = db;
  }

  @Transactional
  void joined(UUID member, Instant at) {
    db.createNativeMutationQuery("update member set created_at = :at where id = :member")
        .setParameter("at", at)
        .setParameter("member", member)
        .executeUpdate();
  }

  /** A machine is described on the evening its owner joined. */
  @Transactional
  void described(UUID machine) {
    db.createNativeMutationQuery(
            """
            update machine set
              created_at = m.created_at + interval '2 hours',
              updated_at = m.created_at + interval '2 hours'
            from member m
            where machine.id = :machine and m.id = machine.member_id""")
        .setParameter("machine", machine)
        .executeUpdate();
  }
}
