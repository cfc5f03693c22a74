package club.emberwell.desk.rule;

import club.emberwell.desk.DeskConfig;
import club.emberwell.desk.DeskLimits;
import club.emberwell.entry.Entry;
import club.emberwell.entry.EntryEntity;
import club.emberwell.entry.EntryKind;
import club.emberwell.entry.EntryRef;
import club.emberwell.listing.Place;
import club.emberwell.remark.Coded;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.UUID;
import org.hibernate.Session;
import org.hibernate.query.SelectionQuery;

/** How rules are set, whom they spare, and what they noticed. */
@ApplicationScoped
public class RuleRepository {
  /** A note n beside its entry e and the name of that entry's author. */
  private static final String NOTES =
      """
      select n, e, a.handle
      from RuleNoteEntity n
      join EntryEntity e on e.id = n.entryId
      join Member a on a.id = e.memberId
      """;

  private static final List<String> POSTS = EntryKind.POSTS.stream().map(EntryKind::code).toList();

  private final Session db;
  private final DeskConfig config;

  RuleRepository(Session db, DeskConfig config) {
    this.db = db;
    this.config = config;
  }

  private record Stored(
      String code,
      String mode,
      Double threshold,
      Integer minutes,
      int version,
      Instant changedAt,
      int notes) {}

  private record Noted(RuleNoteEntity note, EntryEntity entry, String author) {}

  private record FirstLookAsks(String mode, Double threshold, boolean trusted, int accepted) {}

  public List<Rule> all() {
    return db.createNativeQuery(
            """
            select r.code, r.mode, r.threshold, r.window_minutes, r.version, r.changed_at,
              cast((select count(*) from (
                select 1 from desk_rule_note n where n.rule = r.code limit :most) c) as integer)
            from desk_rule r
            """,
            Stored.class)
        .setParameter("most", DeskLimits.COUNT + 1)
        .getResultStream()
        .map(this::rule)
        .sorted(Comparator.comparing(Rule::code))
        .toList();
  }

  private Rule rule(Stored set) {
    RuleCode code = Coded.of(RuleCode.class, set.code).orElseThrow();
    return new Rule(
        code,
        set.mode,
        set.threshold == null ? preset(code) : set.threshold,
        set.minutes == null ? code.minutes() : set.minutes,
        set.version,
        set.changedAt,
        set.notes);
  }

  private double preset(RuleCode code) {
    return code == RuleCode.FIRST_LOOK ? config.firstLook() : code.threshold();
  }

  boolean set(Rule rule, Instant now) {
    return db.createNativeMutationQuery(
                """
                update desk_rule
                set mode = :mode, threshold = :threshold, window_minutes = :minutes,
                  version = version + 1, changed_at = :now
                where code = :code and version = :version
                """)
            .setParameter("mode", rule.mode())
            .setParameter("threshold", rule.threshold())
            .setParameter("minutes", rule.minutes())
            .setParameter("now", now)
            .setParameter("code", rule.code().code())
            .setParameter("version", rule.version())
            .executeUpdate()
        > 0;
  }

  /** Everything the first look asks, in one statement. */
  boolean waits(UUID member) {
    FirstLookAsks found =
        db.createNativeQuery(
                """
                select r.mode, r.threshold,
                  exists (select 1 from desk_trust t where t.member_id = :member),
                  cast((select count(*) from (
                    select 1 from entry e
                    where e.member_id = :member and e.state = 'live' and e.kind in (:posts)
                    limit :most) c) as integer)
                from desk_rule r
                where r.code = :code
                """,
                FirstLookAsks.class)
            .setParameter("posts", POSTS)
            .setParameter("member", member)
            .setParameter("most", DeskLimits.FIRST_LOOK_MOST)
            .setParameter("code", RuleCode.FIRST_LOOK.code())
            .getSingleResult();
    double needed = found.threshold == null ? config.firstLook() : found.threshold;
    return found.mode.equals(Rule.HOLD) && !found.trusted && found.accepted < needed;
  }

  public void trust(UUID member) {
    db.createNativeMutationQuery(
            """
            insert into desk_trust (member_id) values (:member) on conflict do nothing
            """)
        .setParameter("member", member)
        .executeUpdate();
  }

  public void distrust(UUID member) {
    db.createNativeMutationQuery("delete from desk_trust where member_id = :member")
        .setParameter("member", member)
        .executeUpdate();
  }

  /** Notes once what a rule saw in an entry; false where it did before. */
  boolean note(Rule rule, Entry entry, String detail, Instant when) {
    return db.createNativeMutationQuery(
                """
                insert into desk_rule_note (rule, entry_id, detail, mode, at)
                values (:rule, :entry, :detail, :mode, :when)
                on conflict do nothing
                """)
            .setParameter("rule", rule.code().code())
            .setParameter("entry", entry.id())
            .setParameter("detail", detail)
            .setParameter("mode", rule.mode())
            .setParameter("when", when)
            .executeUpdate()
        > 0;
  }

  /** What nobody has looked at yet, newest first. */
  public List<RuleNote> open(Place place) {
    return notes(
        query("where n.state = 'open' and n.id < :id order by n.id desc")
            .setParameter("id", place.number(0))
            .setFirstResult(place.from())
            .setMaxResults(place.most()));
  }

  /** Everything a rule noticed, newest first. */
  List<RuleNote> log(RuleCode rule, Place place) {
    return notes(
        query("where n.rule = :rule and n.id < :id order by n.id desc")
            .setParameter("rule", rule)
            .setParameter("id", place.number(0))
            .setFirstResult(place.from())
            .setMaxResults(place.most()));
  }

  List<RuleNote> openOf(RuleCode rule, UUID member, int most) {
    return notes(
        query(
                "where n.state = 'open' and n.rule = :rule and e.memberId = :member order by n.id desc")
            .setParameter("rule", rule)
            .setParameter("member", member)
            .setMaxResults(most));
  }

  List<RuleNote> on(EntryRef ref) {
    return notes(query("where n.entryId = :entry order by n.id").setParameter("entry", ref.id()));
  }

  private SelectionQuery<Noted> query(String which) {
    return db.createSelectionQuery(NOTES.concat(which), Noted.class);
  }

  private static List<RuleNote> notes(SelectionQuery<Noted> query) {
    return query
        .getResultStream()
        .map(found -> found.note.toNote(found.entry.toEntry(found.author)))
        .toList();
  }

  boolean seen(long id, UUID by) {
    return db.createNativeMutationQuery(
                """
                update desk_rule_note set state = 'seen', seen_by = :by
                where id = :id and state = 'open'
                """)
            .setParameter("by", by)
            .setParameter("id", id)
            .executeUpdate()
        > 0;
  }

  int seenOn(EntryRef ref, UUID by) {
    return db.createNativeMutationQuery(
            """
            update desk_rule_note set state = 'seen', seen_by = :by
            where entry_id = :entry and state = 'open'
            """)
        .setParameter("by", by)
        .setParameter("entry", ref.id())
        .executeUpdate();
  }

  /** True for the one caller who may remind now. */
  public boolean remind(Instant now, Instant notSince) {
    return db.createNativeMutationQuery(
                """
                update desk_progress set reminded_at = :now
                where reminded_at is null or reminded_at < :before
                """)
            .setParameter("now", now)
            .setParameter("before", notSince)
            .executeUpdate()
        > 0;
  }

  /** How many entries a member posted in a stretch of time. */
  long posted(UUID member, Instant from, Instant to) {
    return db.createNativeQuery(
            """
            select count(*) from entry
            where member_id = :member and created_at > :from and created_at <= :to
              and kind in (:posts)
            """,
            Long.class)
        .setParameter("posts", POSTS)
        .setParameter("member", member)
        .setParameter("from", from)
        .setParameter("to", to)
        .getSingleResult();
  }

  /** How many entries with the same words a member posted in a stretch of time. */
  long sameWords(EntryRef ref, UUID member, Instant from, Instant to) {
    String reports =
        """
        select count(*) from entry e join report r on r.id = e.id, report o
        where o.id = :id and e.member_id = :member
          and e.created_at > :from and e.created_at <= :to
          and (r.written_hash = o.written_hash or (length(o.notes) > 40 and r.notes = o.notes))
        """;
    String talk =
        """
        select count(*) from entry e join talk r on r.id = e.id, talk o
        where o.id = :id and e.member_id = :member
          and e.created_at > :from and e.created_at <= :to
          and r.body = o.body
        """;
    return db.createNativeQuery(ref.kind() == EntryKind.REPORT ? reports : talk, Long.class)
        .setParameter("id", ref.id())
        .setParameter("member", member)
        .setParameter("from", from)
        .setParameter("to", to)
        .getSingleResult();
  }

  /** Live entries of a member but for this one, counted no further than {@code most}. */
  long live(UUID member, UUID but, int most) {
    return db.createNativeQuery(
            """
            select count(*) from (
              select 1 from entry
              where member_id = :member and state = 'live' and kind in (:posts) and id <> :but
              limit :most) c
            """,
            Long.class)
        .setParameter("posts", POSTS)
        .setParameter("member", member)
        .setParameter("but", but)
        .setParameter("most", most)
        .getSingleResult();
  }

  /** The free text of an entry. */
  String words(EntryRef ref) {
    String report =
        """
        select concat_ws(' ', notes, lot, controller_version, material_written, coating_written,
          colour_written, result_colour_written, supplier)
        from report where id = :id
        """;
    String talk =
        """
        select concat_ws(' ', case when t.kind not in ('answer', 'comment') then e.title end, t.body)
        from talk t join entry e on e.id = t.id where t.id = :id
        """;
    return db.createNativeQuery(ref.kind() == EntryKind.REPORT ? report : talk, String.class)
        .setParameter("id", ref.id())
        .uniqueResultOptional()
        .orElse("");
  }
}
