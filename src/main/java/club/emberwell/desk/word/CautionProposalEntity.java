package club.emberwell.desk.word;

import club.emberwell.catalog.CautionRule;
import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;
import org.hibernate.annotations.JdbcTypeCode;
import org.hibernate.type.SqlTypes;

/** A caution text that waits, or did. */
@Entity
@Table(name = "desk_caution_proposal")
class CautionProposalEntity {
  @Id UUID id;

  @Column(name = "caution_id")
  String cautionId;

  @Column(name = "base_version")
  int base;

  @JdbcTypeCode(SqlTypes.JSON)
  CautionRule rule;

  String why;

  @Column(name = "member_id")
  UUID memberId;

  @Column(name = "created_at")
  Instant createdAt;

  String state;

  @Column(name = "decided_at")
  Instant decidedAt;

  String outcome;

  CautionProposal toProposal(String by) {
    return new CautionProposal(
        id,
        base,
        rule,
        why,
        new CautionProposal.Author(memberId, by),
        createdAt,
        new CautionProposal.Standing(state, outcome));
  }
}
