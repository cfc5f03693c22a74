package club.emberwell.member.door;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;

/** A link that lets people in; kept as the SHA-256 of its code. */
@Entity
@Table(name = "invitation")
class Invitation {
  @Id UUID id;

  @Column(name = "code_hash")
  byte[] codeHash;

  @Column(name = "member_id")
  UUID memberId;

  String note;
  int most;
  int used;

  @Column(name = "created_at")
  Instant createdAt;

  @Column(name = "expires_at")
  Instant expiresAt;

  @Column(name = "revoked_at")
  Instant revokedAt;

  boolean works(Instant now) {
    return revokedAt == null && expiresAt.isAfter(now) && used < most;
  }
}
