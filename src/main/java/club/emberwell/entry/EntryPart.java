package club.emberwell.entry;

import jakarta.persistence.FetchType;
import jakarta.persistence.Id;
import jakarta.persistence.JoinColumn;
import jakarta.persistence.MappedSuperclass;
import jakarta.persistence.MapsId;
import jakarta.persistence.OneToOne;
import java.util.UUID;

/** What a kind of entries has of its own: a row under the id of its entry. */
@MappedSuperclass
public abstract class EntryPart {
  @Id private UUID id;

  @MapsId
  @OneToOne(fetch = FetchType.LAZY)
  @JoinColumn(name = "id")
  private EntryEntity entry;

  protected EntryPart() {}

  protected EntryPart(EntryEntity entry) {
    this.entry = entry;
  }

  /** That of its entry, without a look at it. */
  public UUID id() {
    return id;
  }

  public EntryEntity entry() {
    return entry;
  }
}
