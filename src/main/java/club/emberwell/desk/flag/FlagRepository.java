package club.emberwell.desk.flag;

import club.emberwell.entry.Entry;
import club.emberwell.entry.EntryEntity;
import club.emberwell.entry.EntryRef;
import club.emberwell.listing.Place;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.Instant;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import org.hibernate.Session;
import org.hibernate.query.SelectionQuery;

/** Rows of flags: one per member and entry. */
@ApplicationScoped
public class FlagRepository {
  /** A flag f with the name of who raised it, beside its entry e with the name of its author. */
  private static final String FLAGS =
      """
      select f, m.handle,
        e, a.handle
      from FlagEntity f
      join Member m on m.id = f.memberId
      join EntryEntity e on e.id = f.entryId
      join Member a on a.id = e.memberId
      """;

  private final Session db;

  FlagRepository(Session db) {
    this.db = db;
  }

  private record Found(FlagEntity flag, String by, EntryEntity entry, String author) {
    Flag toFlag() {
      return flag.toFlag(entry.toEntry(author), by);
    }
  }

  /** How many flags a member has open, and how many were raised lately. */
  record Counts(int open, int fresh) {}

  Optional<Flag> find(UUID member, EntryRef ref) {
    return flags(
            query("where f.memberId = :member and f.entryId = :entry")
                .setParameter("member", member)
                .setParameter("entry", ref.id()))
        .stream()
        .findFirst();
  }

  /** Adds a flag, or opens again one that was withdrawn. */
  void open(UUID member, EntryRef ref, FlagReason reason, String note, Instant now) {
    db.createNativeMutationQuery(
            """
            insert into desk_flag
              (id, member_id, entry_id, reason, note, state, created_at)
            values (:id, :member, :entry, :reason, :note, 'open', :now)
            on conflict (member_id, entry_id) do update set
              reason = excluded.reason, note = excluded.note,
              state = 'open', created_at = excluded.created_at
            where desk_flag.state = 'withdrawn'
            """)
        .setParameter("id", UUID.randomUUID())
        .setParameter("member", member)
        .setParameter("entry", ref.id())
        .setParameter("reason", reason.code())
        .setParameter("note", note, String.class)
        .setParameter("now", now)
        .executeUpdate();
  }

  boolean withdraw(UUID member, UUID id) {
    return db.createNativeMutationQuery(
                """
                update desk_flag set state = 'withdrawn'
                where id = :id and member_id = :member and state = 'open'
                """)
            .setParameter("id", id)
            .setParameter("member", member)
            .executeUpdate()
        > 0;
  }

  Counts counts(UUID member, Instant since) {
    return db.createNativeQuery(
            """
            select cast(count(*) filter (where state = 'open') as integer) as open,
              cast(count(*) filter (where created_at >= :since) as integer) as fresh
            from desk_flag
            where member_id = :member and (state = 'open' or created_at >= :since)
            """,
            Counts.class)
        .setParameter("member", member)
        .setParameter("since", since)
        .getSingleResult();
  }

  /** A member's flags, newest first. */
  List<Flag> of(UUID member, Place place) {
    return flags(
        query(
                """
                where f.memberId = :member and (f.createdAt, f.id) < (:at, :id)
                order by f.createdAt desc, f.id desc""")
            .setParameter("member", member)
            .setParameter("at", place.time(0))
            .setParameter("id", place.id(1))
            .setFirstResult(place.from())
            .setMaxResults(place.most()));
  }

  /** A member's flags that were answered since a time, the last answer first. */
  List<Flag> answered(UUID member, Instant since, int most) {
    return flags(
        query(
                """
                where f.memberId = :member and f.decidedAt >= :since
                order by f.decidedAt desc""")
            .setParameter("member", member)
            .setParameter("since", since)
            .setMaxResults(most));
  }

  List<Flag> openOn(EntryRef ref, int most) {
    return flags(
        query("where f.entryId = :entry and f.state = 'open' order by f.createdAt")
            .setParameter("entry", ref.id())
            .setMaxResults(most));
  }

  /** Entries with open flags, the longest flagged first. */
  public List<Flagged> open(Place place) {
    List<Flag> open =
        flags(
            query(
                    """
                    where f.state = 'open' and f.entryId in (
                      select g.entryId from FlagEntity g where g.state = 'open' group by g.entryId
                      having (min(g.createdAt), g.entryId) > (:at, :id)
                      order by min(g.createdAt), g.entryId limit :most offset :skip)
                    order by f.createdAt, f.entryId
                    """)
                .setParameter("at", place.time(0))
                .setParameter("id", place.id(1))
                .setParameter("skip", place.from())
                .setParameter("most", place.most()));
    Map<Entry, List<Flag>> byEntry =
        open.stream()
            .collect(Collectors.groupingBy(Flag::entry, LinkedHashMap::new, Collectors.toList()));
    return byEntry.entrySet().stream()
        .map(each -> flagged(each.getKey(), each.getValue()))
        .toList();
  }

  private static Flagged flagged(Entry entry, List<Flag> flags) {
    List<FlagReason> reasons =
        flags.stream()
            .map(Flag::reason)
            .distinct()
            .sorted(Comparator.comparing(FlagReason::code))
            .toList();
    return new Flagged(entry, flags.size(), reasons, flags.get(0).createdAt());
  }

  /** Settles the open flags on an entry that were raised for these reasons; answers how many. */
  int settle(EntryRef ref, List<FlagReason> reasons, String state, Flag.Settled said) {
    return db.createNativeMutationQuery(
            """
            update desk_flag
            set state = :state, decided_at = :now, outcome = :outcome
            where entry_id = :entry and state = 'open' and reason in (:reasons)
            """)
        .setParameter("state", state)
        .setParameter("now", said.at())
        .setParameter("outcome", said.outcome())
        .setParameter("entry", ref.id())
        .setParameterList("reasons", reasons.stream().map(FlagReason::code).toList())
        .executeUpdate();
  }

  private SelectionQuery<Found> query(String which) {
    return db.createSelectionQuery(FLAGS.concat(which), Found.class);
  }

  /** Detached, so that what a statement changed is seen when it is read again. */
  private List<Flag> flags(SelectionQuery<Found> query) {
    List<Found> found = query.getResultList();
    found.forEach(each -> db.detach(each.flag));
    return found.stream().map(Found::toFlag).toList();
  }
}
