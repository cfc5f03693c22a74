package club.emberwell.hook;

import club.emberwell.desk.flag.FlagReason;
import club.emberwell.entry.EntryAction;
import club.emberwell.entry.EntryKind;
import club.emberwell.entry.EntryRef;
import club.emberwell.entry.EntryState;
import club.emberwell.hook.HookEvent.Move;
import club.emberwell.remark.Coded;
import club.emberwell.report.ReportTitle;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.Tuple;
import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.UUID;
import org.hibernate.Session;

/** Reads what became of whom by change rows, beside what it is about as that stands now. */
@ApplicationScoped
class ChangeNewsRepository {
  private final Session db;

  ChangeNewsRepository(Session db) {
    this.db = db;
  }

  /**
   * Something that happened.
   *
   * @param item id of what the change row names: an entry, a flag, a word, ...
   * @param event what it is told as
   * @param about the entry; null where there is none, or it is gone for good
   * @param reason of a flag, or null
   */
  record News(
      long seq,
      Instant at,
      HookEvent event,
      UUID item,
      EntryKind kind,
      About about,
      FlagReason reason) {

    UUID entry() {
      return about != null ? about.ref().id() : kind != null ? item : null;
    }
  }

  /**
   * An entry as it stands now.
   *
   * @param title as lists call it; of an answer, that of its question
   * @param shown whether everybody may read it
   */
  record About(EntryRef ref, UUID parent, String title, boolean shown) {}

  /** In the order in which it happened. */
  List<News> of(Collection<Long> seqs) {
    return db.createNativeQuery(
            """
            select c.seq as seq, c.at as at, c.entity as entity, c.entity_id as item, c.move as move,
              v.action as action, f.reason as reason, e.id as entry_id, e.kind as kind,
              e.state as state, e.parent_id as parent_id, q.state as parent_state,
              coalesce(q.title, e.title) as title, r.process as process, r.source as source
            from change_row c
            left join desk_flag f on c.entity = 'flag' and f.id = c.entity_id
            left join entry e on e.id = coalesce(f.entry_id, c.entity_id)
            left join entry q on q.id = e.parent_id
            left join report r on r.id = e.id
            left join entry_revision v on v.entry_id = c.entity_id and v.version = c.version
            where c.seq in (:seqs) and c.move is not null
            order by c.xid, c.seq\
            """,
            Tuple.class)
        .setParameterList("seqs", seqs)
        .getResultStream()
        .map(ChangeNewsRepository::news)
        .filter(news -> news != null)
        .toList();
  }

  private static News news(Tuple row) {
    String entity = row.get("entity", String.class);
    Move move = Move.valueOf(row.get("move", String.class).toUpperCase(Locale.ROOT));
    boolean byItself = EntryAction.READ_AGAIN.code().equals(row.get("action", String.class));
    String reason = row.get("reason", String.class);
    return HookEvent.of(entity, move)
        // nobody changed it: the program reads the same words with a newer vocabulary
        .filter(event -> !(move == Move.CHANGED && byItself))
        .map(
            event ->
                new News(
                    row.get("seq", Long.class),
                    row.get("at", Instant.class),
                    event,
                    row.get("item", UUID.class),
                    Coded.of(EntryKind.class, entity).orElse(null),
                    row.get("entry_id") == null ? null : about(row),
                    reason == null ? null : Coded.of(FlagReason.class, reason).orElseThrow()))
        .orElse(null);
  }

  private static About about(Tuple row) {
    EntryKind kind = Coded.of(EntryKind.class, row.get("kind", String.class)).orElseThrow();
    String title = row.get("title", String.class);
    String live = EntryState.LIVE.code();
    String parent = row.get("parent_state", String.class);
    return new About(
        new EntryRef(kind, row.get("entry_id", UUID.class)),
        row.get("parent_id", UUID.class),
        kind == EntryKind.REPORT
            ? ReportTitle.of(
                title, row.get("process", String.class), row.get("source", String.class))
            : title,
        live.equals(row.get("state", String.class)) && (parent == null || live.equals(parent)));
  }
}
