package club.emberwell.desk;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;
import org.hibernate.Session;

/** Rows of flags: one per member and item. */
@ApplicationScoped
class FlagRepository extends SqlRepository {
  private static final String SELECT =
      "select f.id as id, f.member_id as member,"
          + " case when m.status = 'erased' then 'former member' else m.handle end as said_by,"
          + " f.item_kind as kind, f.item_id as item_id, f.reason as reason, f.note as note,"
          + " f.state as state, f.created_at as created_at, f.decided_at as decided_at,"
          + " f.outcome as outcome, i.title as title, i.parent_id as parent"
          + " from desk_flag f join member m on m.id = f.member_id"
          + " left join desk_item i on i.kind = f.item_kind and i.id = f.item_id ";

  FlagRepository(Session db) {
    super(db);
  }

  Optional<Flag> find(UUID id) {
    return rows(SELECT + "where f.id = :id", "id", id).stream()
        .findFirst()
        .map(FlagRepository::flag);
  }

  Optional<Flag> find(UUID member, ItemRef ref) {
    return rows(
            SELECT + "where f.member_id = :member and f.item_kind = :kind and f.item_id = :item",
            "member",
            member,
            "kind",
            ref.kind().code(),
            "item",
            ref.id())
        .stream()
        .findFirst()
        .map(FlagRepository::flag);
  }

  /** Adds a flag, or opens again one that was withdrawn. */
  void open(UUID member, ItemRef ref, FlagReason reason, String note, Instant now) {
    write(
        "insert into desk_flag"
            + " (id, member_id, item_kind, item_id, reason, note, owner_role, state, created_at)"
            + " values (:id, :member, :kind, :item, :reason, :note, :owner, 'open', :now)"
            + " on conflict (member_id, item_kind, item_id) do update set reason = excluded.reason,"
            + " note = excluded.note, owner_role = excluded.owner_role, state = 'open',"
            + " created_at = excluded.created_at where desk_flag.state = 'withdrawn'",
        "id",
        UUID.randomUUID(),
        "member",
        member,
        "kind",
        ref.kind().code(),
        "item",
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

  List<Flag> openOn(ItemRef ref, int most) {
    return rows(
            SELECT
                + "where f.item_kind = :kind and f.item_id = :item and f.state = 'open'"
                + " order by f.created_at limit :most",
            "kind",
            ref.kind().code(),
            "item",
            ref.id(),
            "most",
            most)
        .stream()
        .map(FlagRepository::flag)
        .toList();
  }

  /** Items with open flags, the longest flagged first. */
  List<Flagged> open(int from, int most) {
    return rows(
            "select"
                + ItemRepository.COLUMNS
                + ", f.flags as flags, f.reasons as reasons, f.oldest as oldest from"
                + " (select item_kind, item_id, count(*) as flags, min(created_at) as oldest,"
                + " string_agg(distinct reason, ' ') as reasons from desk_flag"
                + " where state = 'open' group by item_kind, item_id"
                + " order by min(created_at), item_id offset :skip limit :most) f"
                + " join desk_item i on i.kind = f.item_kind and i.id = f.item_id"
                + " join member a on a.id = i.member_id order by f.oldest, i.id",
            "skip",
            from,
            "most",
            most)
        .stream()
        .map(
            row ->
                new Flagged(
                    ItemRepository.item(row),
                    (int) row.number("flags"),
                    Stream.of(row.text("reasons").split(" "))
                        .flatMap(code -> FlagReason.of(code).stream())
                        .toList(),
                    row.time("oldest")))
        .toList();
  }

  /** Settles the open flags on an item that a role may settle; answers how many. */
  int settle(ItemRef ref, boolean owners, String state, UUID by, String outcome, Instant now) {
    return write(
        "update desk_flag set state = :state, decided_by = :by, decided_at = :now,"
            + " outcome = :outcome where item_kind = :kind and item_id = :item and state = 'open'"
            + (owners ? "" : " and owner_role = 'moderator'"),
        "state",
        state,
        "by",
        by,
        "now",
        now,
        "outcome",
        outcome,
        "kind",
        ref.kind().code(),
        "item",
        ref.id());
  }

  private static Flag flag(Row row) {
    return new Flag(
        row.uuid("id"),
        row.uuid("member"),
        row.text("said_by"),
        new ItemRef(ItemKind.of(row.text("kind")).orElseThrow(), row.uuid("item_id")),
        FlagReason.of(row.text("reason")).orElseThrow(),
        row.text("note"),
        row.text("state"),
        row.time("created_at"),
        row.time("decided_at"),
        row.text("outcome"),
        row.has("title") ? row.text("title") : "",
        row.uuid("parent"));
  }
}
