package club.emberwell.catalog.store;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.util.UUID;

/** A spelling of a term; once removed it stays as a mark, so that no data file brings it back. */
@Entity
@Table(name = "synonym")
class SynonymEntity {
  @Id UUID id;

  @Column(name = "term_id")
  String termId;

  String text;
  String origin;
  boolean removed;
  boolean edited;
  int version = 1;

  static SynonymEntity of(String termId, String text, String origin) {
    SynonymEntity entity = new SynonymEntity();
    entity.id = UUID.randomUUID();
    entity.termId = termId;
    entity.text = text;
    entity.origin = origin;
    return entity;
  }
}
