package club.emberwell.catalog.store;

import club.emberwell.catalog.CautionRule;
import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.Map;
import java.util.UUID;
import org.hibernate.annotations.JdbcTypeCode;
import org.hibernate.type.SqlTypes;

/** A caution as stored: the rule as JSON in the shape of the data file, and its standing. */
@Entity
@Table(name = "caution")
class CautionEntity {
  @Id String id;

  @JdbcTypeCode(SqlTypes.JSON)
  Map<String, Object> rule;

  String origin;
  boolean edited;

  @Column(name = "file_hash")
  String fileHash;

  boolean removed;

  @Column(name = "removal_asked_by")
  UUID removalAskedBy;

  @Column(name = "removal_asked_at")
  Instant removalAskedAt;

  @Column(name = "removal_reason")
  String removalReason;

  int version = 1;

  static CautionEntity of(CautionRule rule, String origin) {
    CautionEntity entity = new CautionEntity();
    entity.id = rule.id();
    entity.rule = CatalogJson.map(rule);
    entity.origin = origin;
    return entity;
  }

  CautionRule toRule() {
    return CatalogJson.rule(rule);
  }

  /** What a revision keeps of it. */
  Map<String, Object> state() {
    Map<String, Object> state = CatalogJson.map(toRule());
    state.put("removed", removed);
    state.put("removalAskedBy", removalAskedBy);
    state.put("removalReason", removalReason);
    return state;
  }
}
