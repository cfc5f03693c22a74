package club.emberwell.report.photo;

import club.emberwell.entry.EntryEntity;
import club.emberwell.entry.EntryState;
import club.emberwell.remark.EntryUnknown;
import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.hibernate.Session;

/** Rows of photos; the bytes are only read when a picture is served. */
@ApplicationScoped
public class PhotoRepository implements PanacheRepositoryBase<PhotoEntity, UUID> {
  private static final String ALL =
      """
      select new club.emberwell.report.photo.Photo(
        e.id, new club.emberwell.entry.EntryRef(o.kind, o.id), o.title, e.version,
        new club.emberwell.report.photo.PhotoWords(p.caption, p.alt),
        new club.emberwell.report.photo.Photo$Size(p.picture.width, p.picture.height),
        e.createdAt)
      from PhotoEntity p join p.entry e join EntryEntity o on o.id = e.parentId
      """;

  /** Those in sight of one entry, the first one first. */
  public List<Photo> of(UUID parent) {
    return of(List.of(parent));
  }

  /** Those in sight of several entries, of each the first one first: one statement. */
  List<Photo> of(Collection<UUID> parents) {
    return getEntityManager()
        .createQuery(
            ALL.concat(
                """
                where e.parentId in :parents and e.state = EntryState.LIVE
                order by p.place, e.number"""),
            Photo.class)
        .setParameter("parents", parents)
        .getResultList();
  }

  /** The first of each: one statement. */
  List<Photo> firstOf(Collection<UUID> parents) {
    return getEntityManager()
        .createQuery(
            ALL.concat(
                """
                where e.parentId in :parents and e.state = EntryState.LIVE and not exists (
                  select 1 from PhotoEntity q join q.entry f
                  where f.parentId = e.parentId and f.state = EntryState.LIVE
                    and (q.place, f.number) < (p.place, e.number))"""),
            Photo.class)
        .setParameter("parents", parents)
        .getResultList();
  }

  /** In whatever state, as long as there are bytes. */
  Optional<Photo> photo(UUID id) {
    return getEntityManager()
        .createQuery(ALL.concat("where e.id = :id"), Photo.class)
        .setParameter("id", id)
        .getResultStream()
        .findFirst();
  }

  /** The same of one that must be there. */
  Photo there(UUID id) {
    return photo(id).orElseThrow(() -> new EntryUnknown("picture"));
  }

  Optional<EntryEntity> parent(UUID id) {
    return Optional.ofNullable(getEntityManager().find(EntryEntity.class, id));
  }

  /** A photo's entry beside that of what it belongs to. */
  record Pair(EntryEntity photo, EntryEntity parent) {
    boolean live() {
      return photo.state() == EntryState.LIVE && parent.state() == EntryState.LIVE;
    }
  }

  Optional<Pair> pair(UUID photo) {
    return getEntityManager()
        .createQuery(
            """
            select e, o from PhotoEntity p join p.entry e join EntryEntity o on o.id = e.parentId
            where e.id = :photo""",
            Pair.class)
        .setParameter("photo", photo)
        .getResultStream()
        .findFirst();
  }

  /** Null where the picture has no such size, or not yet. */
  byte[] bytes(UUID photo, PhotoSize size) {
    return getEntityManager()
        .createQuery(
            switch (size) {
              case THUMB -> "select p.picture.thumb from PhotoEntity p where p.id = :photo";
              case MIDDLE -> "select p.picture.middle from PhotoEntity p where p.id = :photo";
              case LARGE -> "select p.picture.picture from PhotoEntity p where p.id = :photo";
            },
            byte[].class)
        .setParameter("photo", photo)
        .getSingleResultOrNull();
  }

  /** Keeps a size that was made since; whoever made it first did the same. */
  void keep(UUID photo, byte[] middle) {
    session()
        .createNativeMutationQuery(
            """
            update photo set middle = :middle, size_bytes = size_bytes + length(:middle)
            where id = :photo and middle is null
            """)
        .setParameter("middle", middle)
        .setParameter("photo", photo)
        .executeUpdate();
  }

  void say(UUID photo, PhotoWords words) {
    session()
        .createMutationQuery("update PhotoEntity set caption = :caption, alt = :alt where id = :id")
        .setParameter("caption", words.caption())
        .setParameter("alt", words.alt())
        .setParameter("id", photo)
        .executeUpdate();
  }

  void put(UUID photo, int place) {
    session()
        .createMutationQuery("update PhotoEntity set place = :place where id = :id")
        .setParameter("place", place)
        .setParameter("id", photo)
        .executeUpdate();
  }

  /** Behind all others. */
  int lastPlace(UUID parent) {
    return getEntityManager()
        .createQuery(
            """
            select coalesce(max(p.place), -1) + 1 from PhotoEntity p join p.entry e
            where e.parentId = :parent""",
            Integer.class)
        .setParameter("parent", parent)
        .getSingleResult();
  }

  private Session session() {
    return getEntityManager().unwrap(Session.class);
  }
}
