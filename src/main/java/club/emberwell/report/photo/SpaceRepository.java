package club.emberwell.report.photo;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.UUID;
import org.hibernate.Session;

/** Counts the bytes of pictures. */
@ApplicationScoped
class SpaceRepository {
  private final Session db;

  SpaceRepository(Session db) {
    this.db = db;
  }

  /**
   * Of all pictures of a member: shown, of grids, kept with lots and fixtures, and chosen for what
   * is not posted yet.
   */
  long used(UUID member) {
    return db.createNativeQuery(
            """
            select coalesce(sum(b.size_bytes), 0)
            from (
              select p.size_bytes from photo p join entry e using (id) where e.member_id = :member
              union all
              select g.size_bytes from grid_photo g join entry e on e.id = g.grid_id
              where e.member_id = :member
              union all
              select k.size_bytes from kept_photo k join entry e on e.id = k.entry_id
              where e.member_id = :member
              union all
              select w.size_bytes from parked_photo w where w.member_id = :member) b
            """,
            Long.class)
        .setParameter("member", member)
        .getSingleResult();
  }
}
