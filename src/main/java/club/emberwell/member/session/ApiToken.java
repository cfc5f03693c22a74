package club.emberwell.member.session;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;

/** A key for programs; shown once, kept as its SHA-256. */
@Entity
@Table(name = "api_token")
class ApiToken {
  @Id UUID id;

  @Column(name = "member_id")
  UUID memberId;

  byte[] hash;
  String label;
  String scopes;

  @Column(name = "created_at")
  Instant createdAt;

  @Column(name = "expires_at")
  Instant expiresAt;

  @Column(name = "last_used")
  Instant lastUsed;

  @Column(name = "last_network")
  String lastNetwork;

  @Column(name = "revoked_at")
  Instant revokedAt;
}
