package club.emberwell.member.session;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;

/** A signed-in browser; the secret itself is only in its cookie. */
@Entity
@Table(name = "session")
class MemberSession {
  @Id
  @Column(name = "id_hash")
  byte[] idHash;

  UUID id;

  @Column(name = "member_id")
  UUID memberId;

  String label;

  @Column(name = "created_at")
  Instant createdAt;

  @Column(name = "last_seen")
  Instant lastSeen;

  @Column(name = "expires_at")
  Instant expiresAt;
}
