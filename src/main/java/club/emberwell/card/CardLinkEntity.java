package club.emberwell.card;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.UUID;

/** A link by which a card can be read; of its secret only the hash is kept. */
@Entity
@Table(name = "recipe_link")
class CardLinkEntity {
  @Id private UUID id;

  @Column(name = "recipe_id", updatable = false)
  private UUID recipe;

  @Column(name = "secret_hash", updatable = false)
  private byte[] secretHash;

  @Column(updatable = false)
  private int version;

  @Column(name = "created_at", updatable = false)
  private Instant createdAt;

  @Column(name = "opened_at")
  private Instant openedAt;

  @Column(name = "ended_at")
  private Instant endedAt;

  protected CardLinkEntity() {}

  CardLinkEntity(UUID recipe, int version, byte[] secretHash) {
    id = UUID.randomUUID();
    this.recipe = recipe;
    this.version = version;
    this.secretHash = secretHash.clone();
    createdAt = now();
  }

  /** The database keeps microseconds. */
  private static Instant now() {
    return Instant.now().truncatedTo(ChronoUnit.MICROS);
  }

  UUID recipe() {
    return recipe;
  }

  void opened() {
    openedAt = now();
  }

  /** A second time does nothing. */
  void end() {
    endedAt = endedAt == null ? now() : endedAt;
  }

  CardLinks.Link toLink() {
    return new CardLinks.Link(id, version, createdAt, openedAt, endedAt);
  }
}
