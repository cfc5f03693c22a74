package club.emberwell.member.session;

import club.emberwell.member.Secrets;
import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Duration;
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

  @Column(name = "confirmed_at")
  Instant confirmedAt;

  /** Whether its browser is to get another secret. */
  boolean renew;

  /** Whether it got one. */
  boolean replaced;

  /** One that begins now, with a proof of who it is. */
  static MemberSession begun(UUID member, String label, String secret, Duration life) {
    MemberSession session = new MemberSession();
    session.idHash = Secrets.sha256(secret);
    session.id = UUID.randomUUID();
    session.memberId = member;
    session.label = label;
    session.createdAt = Instant.now();
    session.lastSeen = session.createdAt;
    session.confirmedAt = session.createdAt;
    session.expiresAt = session.createdAt.plus(life);
    return session;
  }

  /** The same under another secret. */
  MemberSession successor(String secret) {
    MemberSession next = begun(memberId, label, secret, Duration.ZERO);
    next.createdAt = createdAt;
    next.confirmedAt = confirmedAt;
    next.expiresAt = expiresAt;
    return next;
  }
}
