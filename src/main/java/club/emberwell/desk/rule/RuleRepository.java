package club.emberwell.desk.rule;

import club.emberwell.desk.DeskConfig;
import club.emberwell.desk.DeskLimits;
import club.emberwell.desk.SqlRepository;
import club.emberwell.entry.Entry;
import club.emberwell.entry.EntryKind;
import club.emberwell.entry.EntryRef;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.hibernate.Session;

/** How rules are set, what they noticed, and how far they came. */
@ApplicationScoped
public class RuleRepository extends SqlRepository {
  private static final String NOTES =
      "select n.id as note, n.rule as rule, n.detail as detail, n.mode as mode,"
          + " n.state as note_state, n.at as at,"
          + ENTRY
          + " from desk_rule_note n join entry e on e.id = n.entry_id"
          + OF_AUTHOR;

  private final DeskConfig config;

  RuleRepository(Session db, DeskConfig config) {
    super(db);
    this.config = config;
  }

  List<Rule> all() {
    return rows(
            "select r.code as code, r.mode as mode, r.threshold as threshold,"
                + " r.window_minutes as minutes, r.version as version,"
                + " r.changed_at as changed_at, (select count(*) from (select 1 from"
                + " desk_rule_note n where n.rule = r.code limit :most) as c) as notes"
                + " from desk_rule r",
            "most",
            DeskLimits.COUNT + 1)
        .stream()
        .map(this::rule)
        .sorted(java.util.Comparator.comparing(Rule::code))
        .toList();
  }

  private Rule rule(Row row) {
    RuleCode code = RuleCode.of(row.text("code")).orElseThrow();
    return new Rule(
        code,
        row.text("mode"),
        row.has("threshold") ? row.decimal("threshold") : preset(code),
        row.has("minutes") ? (int) row.number("minutes") : code.minutes(),
        (int) row.number("version"),
        row.time("changed_at"),
        (int) row.number("notes"));
  }

  private double preset(RuleCode code) {
    return code == RuleCode.FIRST_LOOK ? config.firstLook() : code.threshold();
  }

  boolean set(Rule rule, UUID by, Instant now) {
    return write(
            "update desk_rule set mode = :mode, threshold = :threshold,"
                + " window_minutes = :minutes, version = version + 1, changed_by = :by,"
                + " changed_at = :now where code = :code and version = :version",
            "mode",
            rule.mode(),
            "threshold",
            rule.threshold(),
            "minutes",
            rule.minutes(),
            "by",
            by,
            "now",
            now,
            "code",
            rule.code().code(),
            "version",
            rule.version())
        > 0;
  }

  /** Everything the first look asks, in one statement. */
  boolean waits(UUID member) {
    Row row =
        rows(
                "select r.mode as mode, r.threshold as threshold,"
                    + " exists (select 1 from desk_trust t where t.member_id = :member) as trusted,"
                    + " (select count(*) from (select 1 from entry e"
                    + " where e.member_id = :member and e.state = 'live' and e.kind <> 'photo'"
                    + " limit :most) as c) as accepted from desk_rule r where r.code = :code",
                "member",
                member,
                "most",
                DeskLimits.FIRST_LOOK_MOST,
                "code",
                RuleCode.FIRST_LOOK.code())
            .get(0);
    double needed = row.has("threshold") ? row.decimal("threshold") : config.firstLook();
    return row.text("mode").equals(Rule.HOLD)
        && !row.yes("trusted")
        && row.number("accepted") < needed;
  }

  boolean trusted(UUID member) {
    return !rows("select 1 as n from desk_trust where member_id = :member", "member", member)
        .isEmpty();
  }

  public void trust(UUID member, UUID by, Instant now) {
    write(
        "insert into desk_trust (member_id, given_by, given_at)"
            + " values (:member, cast(:by as uuid), :now) on conflict do nothing",
        "member",
        member,
        "by",
        by == null ? null : by.toString(),
        "now",
        now);
  }

  public void distrust(UUID member) {
    write("delete from desk_trust where member_id = :member", "member", member);
  }

  /** Notes once what a rule saw in an item; false where it did before. */
  boolean note(RuleCode rule, Entry item, String detail, String mode, Instant now) {
    return write(
            "insert into desk_rule_note (rule, entry_id, detail, mode, at)"
                + " values (:rule, :id, :detail, :mode, :now)"
                + " on conflict do nothing",
            "rule",
            rule.code(),
            "id",
            item.id(),
            "detail",
            detail,
            "mode",
            mode,
            "now",
            now)
        > 0;
  }

  /** What nobody has looked at yet, newest first. */
  public List<RuleNote> open(int from, int most) {
    return notes(
        "where n.state = 'open' order by n.id desc offset :skip limit :most",
        "skip",
        from,
        "most",
        most);
  }

  /** Everything a rule noticed, newest first. */
  List<RuleNote> log(RuleCode rule, int from, int most) {
    return notes(
        "where n.rule = :rule order by n.id desc offset :skip limit :most",
        "rule",
        rule.code(),
        "skip",
        from,
        "most",
        most);
  }

  List<RuleNote> on(EntryRef ref) {
    return notes("where n.entry_id = :id order by n.id", "id", ref.id());
  }

  boolean seen(long id, UUID by) {
    return write(
            "update desk_rule_note set state = 'seen', seen_by = :by"
                + " where id = :id and state = 'open'",
            "by",
            by,
            "id",
            id)
        > 0;
  }

  private List<RuleNote> notes(String where, Object... parameters) {
    return rows(NOTES + where, parameters).stream()
        .map(
            row ->
                new RuleNote(
                    row.number("note"),
                    RuleCode.of(row.text("rule")).orElseThrow(),
                    row.entry(),
                    row.text("detail"),
                    row.text("mode"),
                    row.text("note_state"),
                    row.time("at")))
        .toList();
  }

  /** True for the one caller who may remind now. */
  public boolean remind(Instant now, Instant notSince) {
    return write(
            "update desk_progress set reminded_at = :now"
                + " where reminded_at is null or reminded_at < :before",
            "now",
            now,
            "before",
            notSince)
        > 0;
  }

  /** How many entries a member posted in a stretch of time. */
  long posted(UUID member, Instant from, Instant to) {
    return number(
        "select count(*) as n from entry where member_id = :member and created_at > :from"
            + " and created_at <= :to and kind <> 'photo'",
        "member",
        member,
        "from",
        from,
        "to",
        to);
  }

  /** How many entries with the same words a member posted in a stretch of time. */
  long sameWords(EntryRef ref, UUID member, Instant from, Instant to) {
    String same =
        ref.kind() == EntryKind.REPORT
            ? "select count(*) as n from entry e join report r on r.id = e.id, report o"
                + " where o.id = :id"
                + " and e.member_id = :member and e.created_at > :from and e.created_at <= :to"
                + " and (r.written_hash = o.written_hash"
                + " or (length(o.notes) > 40 and r.notes = o.notes))"
            : "select count(*) as n from entry e join talk r on r.id = e.id, talk o"
                + " where o.id = :id"
                + " and e.member_id = :member and e.created_at > :from and e.created_at <= :to"
                + " and r.body = o.body";
    return number(same, "id", ref.id(), "member", member, "from", from, "to", to);
  }

  /** Live entries of a member but for this one, counted no further than {@code most}. */
  long live(UUID member, UUID but, int most) {
    return number(
        "select count(*) as n from (select 1 from entry where member_id = :member"
            + " and state = 'live' and kind <> 'photo' and id <> :but limit :most) as c",
        "member",
        member,
        "but",
        but,
        "most",
        most);
  }

  /** The free text of an item. */
  String words(EntryRef ref) {
    String sql =
        ref.kind() == EntryKind.REPORT
            ? "select concat_ws(' ', notes, lot, controller_version, material_written,"
                + " coating_written, colour_written) as words from report where id = :id"
            : "select concat_ws(' ', title, body) as words from talk where id = :id";
    return rows(sql, "id", ref.id()).stream().findFirst().map(r -> r.text("words")).orElse("");
  }
}
