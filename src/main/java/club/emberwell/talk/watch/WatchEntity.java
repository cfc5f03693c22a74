package club.emberwell.talk.watch;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;

/** The row of a watch. */
@Entity
@Table(name = "watch")
class WatchEntity {
  @Id private UUID id;

  @Column(name = "member_id", updatable = false)
  private UUID memberId;

  private int version;
  private String label;

  @Column(updatable = false)
  private String query;

  private boolean mail;

  @Column(name = "feed_token")
  private String feedToken;

  @Column(name = "created_at", updatable = false)
  private Instant createdAt;

  protected WatchEntity() {}

  WatchEntity(UUID id, UUID memberId, String query, Instant createdAt) {
    this.id = id;
    this.memberId = memberId;
    this.query = query;
    this.createdAt = createdAt;
  }

  void change(String newLabel, boolean wantsMail) {
    label = newLabel;
    mail = wantsMail;
    version++;
  }

  void feed(String token) {
    feedToken = token;
    version++;
  }

  UUID id() {
    return id;
  }

  UUID memberId() {
    return memberId;
  }

  int version() {
    return version;
  }

  String query() {
    return query;
  }

  boolean mail() {
    return mail;
  }

  Instant createdAt() {
    return createdAt;
  }

  Watch toWatch() {
    return new Watch(id, version, label, query, mail, feedToken, createdAt);
  }
}
