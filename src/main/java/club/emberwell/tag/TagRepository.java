package club.emberwell.tag;

import club.emberwell.entry.EntryEntity;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.Optional;
import java.util.UUID;
import org.hibernate.Session;

/** Rows of tags. They stay when their thing goes, so that no code comes twice. */
@ApplicationScoped
class TagRepository {
  private final Session db;

  TagRepository(Session db) {
    this.db = db;
  }

  /** Gives an entry this code, if it has none and nothing else has it. */
  void offer(TagCode code, UUID entry) {
    db.createNativeMutationQuery(
            """
            insert into tag (code, entry_id) values (:code, :entry) on conflict do nothing""")
        .setParameter("code", code.text())
        .setParameter("entry", entry)
        .executeUpdate();
  }

  Optional<TagCode> of(UUID entry) {
    return db.createNativeQuery("select code from tag where entry_id = :entry", String.class)
        .setParameter("entry", entry)
        .uniqueResultOptional()
        .map(TagCode::new);
  }

  /** The entry with this code; empty where it has gone. */
  Optional<EntryEntity> find(TagCode code) {
    return db.createSelectionQuery(
            """
            select e from TagEntity t join EntryEntity e on e.id = t.entryId where t.code = :code""",
            EntryEntity.class)
        .setParameter("code", code.text())
        .uniqueResultOptional();
  }
}
