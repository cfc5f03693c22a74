package club.emberwell.catalog.store;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.Map;
import java.util.UUID;
import org.hibernate.annotations.JdbcTypeCode;
import org.hibernate.type.SqlTypes;

/** A merge of one term into another, with what an undo needs. */
@Entity
@Table(name = "catalog_merge")
class MergeEntity {
  @Id UUID id;
  String kind;
  String loser;
  String winner;

  @JdbcTypeCode(SqlTypes.JSON)
  Map<String, Object> mapping;

  @Column(name = "undone_at")
  Instant undoneAt;
}
