package club.emberwell.eyewear;

import club.emberwell.entry.own.OwnRows;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/** Rows of glasses. */
@ApplicationScoped
class GlassesRepository implements OwnRows<GlassesEntity> {
  @Override
  public Optional<GlassesEntity> whole(UUID id) {
    return find("from GlassesEntity g join fetch g.entry where g.id = ?1", id)
        .firstResultOptional();
  }

  /** A member's glasses that still stand, in the order they were written down. */
  List<GlassesEntity> standing(UUID member) {
    return list(
        """
        from GlassesEntity g join fetch g.entry e
        where e.memberId = ?1 and e.state = EntryState.LIVE
        order by e.number\
        """,
        member);
  }
}
