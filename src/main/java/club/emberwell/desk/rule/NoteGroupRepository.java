package club.emberwell.desk.rule;

import club.emberwell.entry.Entry;
import club.emberwell.listing.Place;
import club.emberwell.remark.Coded;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.hibernate.Session;

/** Open notes, taken together by rule and member. */
@ApplicationScoped
class NoteGroupRepository {
  private final Session db;

  NoteGroupRepository(Session db) {
    this.db = db;
  }

  private record Found(
      String rule, UUID member, String handle, long count, Instant since, long latest) {
    NoteGroup toGroup() {
      return new NoteGroup(
          Coded.of(RuleCode.class, rule).orElseThrow(),
          new Entry.Author(member, handle),
          count,
          since,
          latest);
    }
  }

  /** Those with the newest notes first: one statement. */
  List<NoteGroup> open(Place place) {
    return db.createNativeQuery(
            """
            select n.rule, m.id, m.handle, count(*) as count, min(n.at) as since,
              max(n.id) as latest
            from desk_rule_note n
            join entry e on e.id = n.entry_id
            join member m on m.id = e.member_id
            where n.state = 'open'
            group by n.rule, m.id
            having max(n.id) < :before
            order by max(n.id) desc limit :most offset :skip
            """,
            Found.class)
        .setParameter("before", place.number(0))
        .setParameter("most", place.most())
        .setParameter("skip", place.from())
        .getResultStream()
        .map(Found::toGroup)
        .toList();
  }
}
