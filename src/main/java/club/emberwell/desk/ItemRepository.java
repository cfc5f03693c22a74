package club.emberwell.desk;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.hibernate.Session;

/** Items of every kind, through one view. */
@ApplicationScoped
class ItemRepository extends SqlRepository {
  /** What {@link #item} reads, of a view named i and its author named a. */
  static final String COLUMNS =
      " i.kind as kind, i.id as id, i.member_id as author, i.title as title, i.state as state,"
          + " i.created_at as created_at, i.parent_id as parent,"
          + " case when a.status = 'erased' then 'former member' else a.handle end as handle ";

  static final String FROM = " from desk_item i join member a on a.id = i.member_id ";

  ItemRepository(Session db) {
    super(db);
  }

  static Item item(Row row) {
    return new Item(
        new ItemRef(ItemKind.of(row.text("kind")).orElseThrow(), row.uuid("id")),
        row.uuid("author"),
        row.text("handle"),
        row.text("title"),
        row.text("state"),
        row.time("created_at"),
        row.uuid("parent"));
  }

  Optional<Item> find(ItemRef ref) {
    flush();
    return rows(
            "select" + COLUMNS + FROM + "where i.id = :id and i.kind = :kind",
            "id",
            ref.id(),
            "kind",
            ref.kind().code())
        .stream()
        .findFirst()
        .map(ItemRepository::item);
  }

  /** What waits for a look, oldest first. */
  List<Item> waiting(int from, int most) {
    return rows(
            "select"
                + COLUMNS
                + FROM
                + "where i.state = 'WAITING' order by i.created_at, i.id offset :skip limit :most",
            "skip",
            from,
            "most",
            most)
        .stream()
        .map(ItemRepository::item)
        .toList();
  }

  /** A member's newest items, in whatever state. */
  List<Item> of(UUID member, int from, int most) {
    return rows(
            "select"
                + COLUMNS
                + FROM
                + "where i.member_id = :member order by i.created_at desc, i.id"
                + " offset :skip limit :most",
            "member",
            member,
            "skip",
            from,
            "most",
            most)
        .stream()
        .map(ItemRepository::item)
        .toList();
  }
}
