package club.emberwell.hook;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.List;
import java.util.UUID;

/** The row of a webhook. */
@Entity
@Table(name = "webhook")
class WebhookEntity {
  @Id private UUID id;

  @Column(name = "member_id", updatable = false)
  private UUID memberId;

  private String label;
  private String url;
  private String[] events;
  private String secret;

  @Column(name = "old_secret")
  private String oldSecret;

  @Column(name = "old_until")
  private Instant oldUntil;

  @Enumerated(EnumType.STRING)
  private HookState state;

  @Column(name = "failing_since")
  private Instant failingSince;

  @Column(name = "arrived_at")
  private Instant arrivedAt;

  @Column(name = "left_out")
  private long leftOut;

  private int version;

  @Column(name = "created_at", updatable = false)
  private Instant createdAt;

  @Column(name = "updated_at")
  private Instant updatedAt;

  protected WebhookEntity() {}

  WebhookEntity(UUID id, UUID memberId, Instant createdAt) {
    this.id = id;
    this.memberId = memberId;
    this.secret = HookSignature.secret();
    this.createdAt = createdAt;
  }

  /** As an owner wants it; one that is switched on again begins anew. */
  void change(String newLabel, String newUrl, List<HookEvent> wanted, boolean on, Instant now) {
    label = newLabel;
    url = newUrl;
    events = wanted.stream().map(HookEvent::code).toArray(String[]::new);
    if (on && state != HookState.ON) {
      failingSince = null;
      leftOut = 0;
      state = HookState.ON;
    } else if (!on && (state == null || state == HookState.ON)) {
      state = HookState.OFF;
    }
    changed(now);
  }

  /** Takes a new secret; the present one signs beside it for a while. */
  void renewSecret(Instant now, Instant until) {
    oldSecret = secret;
    oldUntil = until;
    secret = HookSignature.secret();
    changed(now);
  }

  private void changed(Instant now) {
    version++;
    updatedAt = now;
  }

  UUID id() {
    return id;
  }

  int version() {
    return version;
  }

  String url() {
    return url;
  }

  String secret() {
    return secret;
  }

  HookState state() {
    return state;
  }

  Webhook toWebhook(String handle) {
    return new Webhook(
        id,
        version,
        label,
        url,
        HookEvent.CHOICES.stream().filter(e -> List.of(events).contains(e.code())).toList(),
        new Webhook.Standing(state, failingSince, arrivedAt, leftOut),
        new Webhook.Made(memberId, handle, createdAt, updatedAt));
  }
}
