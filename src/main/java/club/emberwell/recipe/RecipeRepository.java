package club.emberwell.recipe;

import club.emberwell.entry.EntryKind;
import club.emberwell.listing.Place;
import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.hibernate.Session;

/** Rows of recipes. */
@ApplicationScoped
class RecipeRepository implements PanacheRepositoryBase<RecipeEntity, UUID> {
  private final Session db;

  RecipeRepository(Session db) {
    this.db = db;
  }

  /** A recipe that still stands, and where in each order. */
  record Standing(UUID id, Instant used, Instant at, String name, long number) {
    List<?> place(RecipeSort sort) {
      return switch (sort) {
        case USED -> List.of(used, number);
        case NEWEST -> List.of(at, number);
        case NAME -> List.of(name, number);
      };
    }
  }

  Optional<RecipeEntity> whole(UUID id) {
    return find("from RecipeEntity r join fetch r.entry where r.id = ?1", id).firstResultOptional();
  }

  long countOf(UUID member) {
    return count("entry.memberId = ?1", member);
  }

  /** Those of a member's recipes that still stand and are asked for, in their order. */
  List<Standing> standing(UUID member, RecipeQuery query, Place place) {
    boolean named = query.sort() == RecipeSort.NAME;
    boolean used = query.sort() == RecipeSort.USED;
    return db.createNativeQuery(
            """
            select s.id, s.used, s.at, s.name, s.number from (
              select r.id, coalesce(r.used_at, e.created_at) as used, e.created_at as at,
                lower(e.title) collate "C" as name, e.number
              from recipe r join entry e using (id, kind) join machine m on m.id = r.machine_id
              where e.member_id = :member and e.state = 'live'
                and (cast(:folder as text) is null or r.folder = :folder)
                and concat_ws(' ', r.words, lower(m.name)) like all (:patterns)) s
            where case when :named then (s.name, s.number) > (:name, :number)
              when :byUse then (s.used, s.number) < (:time, :number)
              else (s.at, s.number) < (:time, :number) end
            order by case when :named then s.name end,
              case when :named then s.number end,
              case when :byUse then s.used when not :named then s.at end desc,
              s.number desc\
            """,
            Standing.class)
        .setParameter("member", member)
        .setParameter("folder", query.folder())
        .setParameter("patterns", query.patterns().toArray(String[]::new))
        .setParameter("named", named)
        .setParameter("byUse", used)
        .setParameter("name", named ? place.word(0) : "")
        .setParameter("time", named ? Instant.EPOCH : place.time(0))
        .setParameter("number", place.number(1))
        .setFirstResult(place.from())
        .setMaxResults(place.most())
        .getResultList();
  }

  /** These of a member's recipes, in no particular order. */
  List<RecipeEntity> all(Collection<UUID> ids) {
    return ids.isEmpty()
        ? List.of()
        : list("from RecipeEntity r join fetch r.entry where r.id in ?1", ids);
  }

  /** Every recipe of a member that still stands, the oldest first. */
  List<RecipeEntity> everyStanding(UUID member) {
    return list(
        """
        from RecipeEntity r join fetch r.entry e
        where e.memberId = ?1 and e.state = EntryState.LIVE
        order by e.number\
        """,
        member);
  }

  List<Folders.Folder> folders(UUID member) {
    return db.createNativeQuery(
            """
            select r.folder, cast(count(*) as integer) as recipes
            from recipe r join entry e using (id, kind)
            where e.member_id = :member and e.state = 'live' and r.folder is not null
            group by r.folder
            order by lower(r.folder), r.folder\
            """,
            Folders.Folder.class)
        .setParameter("member", member)
        .getResultList();
  }

  /** A member's recipes in a folder, which still stand. */
  List<UUID> in(UUID member, String folder) {
    return db.createQuery(
            """
            select r.id from RecipeEntity r join r.entry e
            where e.memberId = :member and e.state = EntryState.LIVE and r.folder = :folder
            order by r.id\
            """,
            UUID.class)
        .setParameter("member", member)
        .setParameter("folder", folder)
        .getResultList();
  }

  /** Also one that was withdrawn: settings may have come from it. */
  boolean isOwnGrid(UUID member, UUID id) {
    return isOwn(member, EntryKind.GRID, id);
  }

  /** Also one that was withdrawn. */
  boolean isOwn(UUID member, EntryKind kind, UUID id) {
    return db.createQuery(
                """
                select count(*) from EntryEntity e
                where e.id = :id and e.memberId = :member and e.kind = :kind\
                """,
                Long.class)
            .setParameter("id", id)
            .setParameter("member", member)
            .setParameter("kind", kind)
            .getSingleResult()
        > 0;
  }

  /** How many positions one of a member's fixtures has, also one that was removed. */
  Optional<Integer> positions(UUID member, UUID fixture) {
    return db.createNativeQuery(
            """
            select f.row_count * f.column_count as positions
            from fixture f join entry e using (id, kind)
            where f.id = :id and e.member_id = :member\
            """,
            Integer.class)
        .setParameter("id", fixture)
        .setParameter("member", member)
        .uniqueResultOptional();
  }

  /** Notes that a report was posted with a recipe as it is. */
  void reported(UUID recipe, UUID report, int version) {
    db.createNativeMutationQuery(
            """
            insert into recipe_report (recipe_id, report_id, version)
            values (:recipe, :report, :version)
            on conflict do nothing\
            """)
        .setParameter("recipe", recipe)
        .setParameter("report", report)
        .setParameter("version", version)
        .executeUpdate();
  }

  /** Reports posted with a recipe that stand still, the newest first. */
  List<RecipeReports.Posted> reports(UUID recipe) {
    return db.createNativeQuery(
            """
            select e.id as report, p.version, e.created_at as at
            from recipe_report p join entry e on e.id = p.report_id
            where p.recipe_id = :recipe and e.state in ('live', 'waiting', 'held')
            order by e.number desc\
            """,
            RecipeReports.Posted.class)
        .setParameter("recipe", recipe)
        .getResultList();
  }
}
