package club.emberwell.entry;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.Id;
import jakarta.persistence.IdClass;
import jakarta.persistence.Table;
import java.io.Serializable;
import java.time.Instant;
import java.util.UUID;
import org.hibernate.annotations.ColumnTransformer;
import org.hibernate.annotations.Immutable;

/** One state an entry was in; rows are only added. */
@Entity
@Immutable
@Table(name = "entry_revision")
@IdClass(RevisionEntity.Key.class)
class RevisionEntity {
  /** Which version of which entry. */
  record Key(UUID entryId, int version) implements Serializable {}

  @Id
  @Column(name = "entry_id")
  private UUID entryId;

  @Id private int version;

  @Enumerated(EnumType.STRING)
  private EntryAction action;

  @Column(name = "member_id")
  private UUID memberId;

  private String rule;
  private Instant at;
  private String reason;

  @Enumerated(EnumType.STRING)
  private EntryState state;

  @Column(columnDefinition = "jsonb")
  @ColumnTransformer(write = "?::jsonb")
  private String written;

  @Column(columnDefinition = "jsonb")
  @ColumnTransformer(write = "?::jsonb")
  private String interpreted;

  protected RevisionEntity() {}

  /**
   * @param words null where they are those of the version before
   */
  RevisionEntity(EntryEntity entry, EntryAction action, Cause cause, Words words) {
    entryId = entry.id();
    version = entry.version();
    state = entry.state();
    this.action = action;
    memberId = cause.member();
    rule = cause.rule();
    at = cause.at();
    reason = cause.reason();
    written = words == null ? null : words.written();
    interpreted = words == null ? null : words.interpreted();
  }
}
