package club.emberwell.member.door;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;

/** What somebody said who asked to come in, and what was answered. */
@Entity
@Table(name = "join_request")
class JoinRequest {
  @Id
  @Column(name = "member_id")
  UUID memberId;

  String text;

  @Column(name = "asked_at")
  Instant askedAt;

  @Column(name = "decided_at")
  Instant decidedAt;

  Boolean accepted;
  String reason = "";
}
