package club.emberwell.entry;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.Tuple;
import java.time.Instant;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.hibernate.Session;
import org.hibernate.query.SelectionQuery;

/** Reads what was decided: the revisions that moderators and rules made. */
@ApplicationScoped
class VerdictRepository {
  private static final Set<EntryAction> ALL =
      EnumSet.of(EntryAction.HELD, EntryAction.REMOVED, EntryAction.RESTORED, EntryAction.APPROVED);

  /** A revision v of an entry e, its author a, and who made it. */
  private static final String DECIDED =
      """
      select e, a.handle, v.action, m.id, m.handle, v.rule, v.reason, v.at
      from RevisionEntity v
      join EntryEntity e on e.id = v.entryId
      join Member a on a.id = e.memberId
      left join Member m on m.id = v.memberId
      where v.action in :actions and (v.memberId is not null or v.rule is not null)
      """;

  private final Session db;

  VerdictRepository(Session db) {
    this.db = db;
  }

  /** What was decided about an entry, newest first. */
  List<Verdict> about(UUID entry, int most) {
    return verdicts(
        query(DECIDED.concat("and e.id = :entry order by v.version desc"))
            .setParameter("actions", ALL)
            .setParameter("entry", entry)
            .setMaxResults(most));
  }

  /** What was decided about a member's entries, newest first; plain first looks left out. */
  List<Verdict> toldTo(UUID author, int from, int most) {
    return verdicts(
        query(DECIDED.concat("and e.memberId = :author order by v.at desc, v.version desc"))
            .setParameter("actions", Verdicts.TOLD)
            .setParameter("author", author)
            .setFirstResult(from)
            .setMaxResults(most));
  }

  private SelectionQuery<Tuple> query(String hql) {
    return db.createSelectionQuery(hql, Tuple.class);
  }

  private static List<Verdict> verdicts(SelectionQuery<Tuple> query) {
    return query.getResultStream().map(VerdictRepository::verdict).toList();
  }

  private static Verdict verdict(Tuple row) {
    UUID moderator = row.get(3, UUID.class);
    return new Verdict(
        row.get(0, EntryEntity.class).toEntry(row.get(1, String.class)),
        Decision.of(row.get(2, EntryAction.class)),
        moderator == null ? null : new Entry.Author(moderator, row.get(4, String.class)),
        row.get(5, String.class),
        row.get(6, String.class),
        row.get(7, Instant.class));
  }
}
