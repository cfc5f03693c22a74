package club.emberwell.catalog.store;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.GeneratedValue;
import jakarta.persistence.GenerationType;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.Map;
import java.util.UUID;
import org.hibernate.annotations.Immutable;
import org.hibernate.annotations.JdbcTypeCode;
import org.hibernate.type.SqlTypes;

/** One change of the catalog, before and after. */
@Entity
@Immutable
@Table(name = "catalog_revision")
class CatalogRevisionEntity {
  @Id
  @GeneratedValue(strategy = GenerationType.IDENTITY)
  Long seq;

  String subject;

  @Column(name = "subject_id")
  String subjectId;

  int version;

  @JdbcTypeCode(SqlTypes.JSON)
  Map<String, Object> before;

  @JdbcTypeCode(SqlTypes.JSON)
  Map<String, Object> after;

  @Column(name = "member_id")
  UUID by;

  String why;
  String action;

  @JdbcTypeCode(SqlTypes.JSON)
  Map<String, Object> detail;

  Instant at;

  CatalogRevision toRevision() {
    return new CatalogRevision(subject, subjectId, version, before, after, by, why, at);
  }
}
