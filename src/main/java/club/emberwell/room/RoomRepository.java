package club.emberwell.room;

import club.emberwell.entry.own.OwnRows;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/** Rows of rooms. */
@ApplicationScoped
class RoomRepository implements OwnRows<RoomEntity> {
  @Override
  public Optional<RoomEntity> whole(UUID id) {
    return find("from RoomEntity r join fetch r.entry where r.id = ?1", id).firstResultOptional();
  }

  /** A member's rooms that still stand, in the order they were written down. */
  List<RoomEntity> standing(UUID member) {
    return list(
        """
        from RoomEntity r join fetch r.entry e
        where e.memberId = ?1 and e.kind = EntryKind.ROOM and e.state = EntryState.LIVE
        order by e.number\
        """,
        member);
  }
}
