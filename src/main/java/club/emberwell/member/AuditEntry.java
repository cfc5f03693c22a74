package club.emberwell.member;

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

/** One line of the log. */
@Entity
@Immutable
@Table(name = "audit")
class AuditEntry {
  @Id
  @GeneratedValue(strategy = GenerationType.IDENTITY)
  Long seq;

  Instant at;

  @Column(name = "member_id")
  UUID memberId;

  String action;
  String entity;

  @Column(name = "entity_id")
  String entityId;

  String reason;

  @JdbcTypeCode(SqlTypes.JSON)
  Map<String, Object> detail;
}
