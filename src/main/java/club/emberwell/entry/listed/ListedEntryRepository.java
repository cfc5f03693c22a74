package club.emberwell.entry.listed;

import club.emberwell.entry.EntryKind;
import club.emberwell.entry.listed.ListedEntries.Listed;
import club.emberwell.entry.listed.ListedEntries.Part;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.Set;
import org.hibernate.Session;

/** Rows of live entries by number. */
@ApplicationScoped
class ListedEntryRepository {
  /** Numbers of a part. */
  private static final int SIZE = 10_000;

  private static final Set<EntryKind> KINDS = Set.of(EntryKind.REPORT, EntryKind.QUESTION);

  private final Session db;

  ListedEntryRepository(Session db) {
    this.db = db;
  }

  List<Part> parts() {
    return db.createNativeQuery(
            """
            select cast(number / :size as integer), max(updated_at)
            from entry
            where state = 'live' and kind in ('report', 'question')
            group by 1 order by 1""",
            Part.class)
        .setParameter("size", SIZE)
        .getResultList();
  }

  List<Listed> part(int number) {
    return db.createSelectionQuery(
            """
            select new club.emberwell.entry.listed.ListedEntries$Listed(e.kind, e.id, e.updatedAt)
            from EntryEntity e
            where e.state = EntryState.LIVE and e.kind in :kinds
              and e.number >= :from and e.number < :to
            order by e.number""",
            Listed.class)
        .setParameter("kinds", KINDS)
        .setParameter("from", (long) number * SIZE)
        .setParameter("to", (number + 1L) * SIZE)
        .getResultList();
  }
}
