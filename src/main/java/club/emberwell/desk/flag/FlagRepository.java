package club.emberwell.desk.flag;

import club.emberwell.desk.SqlRepository;
import club.emberwell.entry.Entry;
import club.emberwell.entry.EntryRef;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;
import org.hibernate.Session;

/** Rows of flags: one per member and item. */
@ApplicationScoped
public class FlagRepository extends SqlRepository {
  private static final String SELECT =
      "select f.id as flag_id, f.member_id as member,"
          + " case when m.status = 'erased' then 'former member' else m.handle end as said_by,"
          + " f.reason as reason, f.note as note, f.state as flag_state,"
          + " f.created_at as raised_at, f.decided_at as decided_at, f.outcome as outcome,"
          + ENTRY
          + " from desk_flag f join member m on m.id = f.member_id"
          + " join entry e on e.id = f.entry_id"
          + OF_AUTHOR;

  FlagRepository(Session db) {
    super(db);
  }

  Optional<Flag> find(UUID id) {
    return rows(SELECT + "where f.id = :id", "id", id).stream()
        .findFirst()
        .map(FlagRepository::flag);
  }

  Optional<Flag> find(UUID member, EntryRef ref) {
    return rows(
            SELECT + "where f.member_id = :member and f.entry_id = :entry",
            "member",
            member,
            "entry",
            ref.id())
        .stream()
        .findFirst()
        .map(FlagRepository::flag);
  }

  /** Adds a flag, or opens again one that was withdrawn. */
  void open(UUID member, EntryRef ref, FlagReason reason, String note, Instant now) {
    write(
        "insert into desk_flag"
            + " (id, member_id, entry_id, reason, note, owner_role, state, created_at)"
            + " values (:id, :member, :entry, :reason, :note, :owner, 'open', :now)"
            + " on conflict (member_id, entry_id) do update set reason = excluded.reason,"
            + " note = excluded.note, owner_role = excluded.owner_role, state = 'open',"
            + " created_at = excluded.created_at where desk_flag.state = 'withdrawn'",
        "id",
        UUID.randomUUID(),
        "member",
        member,
        "entry",
        ref.id(),
        "reason",
        reason.code(),
        "note",
        note,
        "owner",
        reason.owner().name().toLowerCase(java.util.Locale.ROOT),
        "now",
        now);
  }

  boolean withdraw(UUID member, UUID id) {
    return write(
            "update desk_flag set state = 'withdrawn'"
                + " where id = :id and member_id = :member and state = 'open'",
            "id",
            id,
            "member",
            member)
        > 0;
  }

  /** How many flags a member has open, and how many were raised since a time. */
  long[] counts(UUID member, Instant since) {
    Row row =
        rows(
                "select count(*) filter (where state = 'open') as open,"
                    + " count(*) filter (where created_at >= :since) as fresh from desk_flag"
                    + " where member_id = :member and (state = 'open' or created_at >= :since)",
                "member",
                member,
                "since",
                since)
            .get(0);
    return new long[] {row.number("open"), row.number("fresh")};
  }

  /** A member's flags, newest first. */
  List<Flag> of(UUID member, int from, int most) {
    return rows(
            SELECT
                + "where f.member_id = :member order by f.created_at desc, f.id"
                + " offset :skip limit :most",
            "member",
            member,
            "skip",
            from,
            "most",
            most)
        .stream()
        .map(FlagRepository::flag)
        .toList();
  }

  List<Flag> openOn(EntryRef ref, int most) {
    return rows(
            SELECT
                + "where f.entry_id = :entry and f.state = 'open'"
                + " order by f.created_at limit :most",
            "entry",
            ref.id(),
            "most",
            most)
        .stream()
        .map(FlagRepository::flag)
        .toList();
  }

  /** Items with open flags, the longest flagged first. */
  public List<Flagged> open(int from, int most) {
    return rows(
            "select"
                + ENTRY
                + ", f.flags as flags, f.reasons as reasons, f.oldest as oldest from"
                + " (select entry_id, count(*) as flags, min(created_at) as oldest,"
                + " string_agg(distinct reason, ' ') as reasons from desk_flag"
                + " where state = 'open' group by entry_id"
                + " order by min(created_at), entry_id offset :skip limit :most) f"
                + " join entry e on e.id = f.entry_id"
                + OF_AUTHOR
                + " order by f.oldest, e.id",
            "skip",
            from,
            "most",
            most)
        .stream()
        .map(
            row ->
                new Flagged(
                    row.entry(),
                    (int) row.number("flags"),
                    Stream.of(row.text("reasons").split(" "))
                        .flatMap(code -> FlagReason.of(code).stream())
                        .toList(),
                    row.time("oldest")))
        .toList();
  }

  /** Settles the open flags on an item that a role may settle; answers how many. */
  int settle(EntryRef ref, boolean owners, String state, UUID by, String outcome, Instant now) {
    return write(
        "update desk_flag set state = :state, decided_by = :by, decided_at = :now,"
            + " outcome = :outcome where entry_id = :entry and state = 'open'"
            + (owners ? "" : " and owner_role = 'moderator'"),
        "state",
        state,
        "by",
        by,
        "now",
        now,
        "outcome",
        outcome,
        "entry",
        ref.id());
  }

  private static Flag flag(Row row) {
    return new Flag(
        row.uuid("flag_id"),
        row.entry(),
        new Entry.Author(row.uuid("member"), row.text("said_by")),
        FlagReason.of(row.text("reason")).orElseThrow(),
        row.text("note"),
        row.text("flag_state"),
        row.time("raised_at"),
        row.has("decided_at")
            ? new Flag.Settled(row.time("decided_at"), row.text("outcome"))
            : null);
  }
}
