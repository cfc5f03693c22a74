package club.emberwell.talk;

import jakarta.persistence.Column;
import jakarta.persistence.Convert;
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
@Table(name = "talk_revision")
@IdClass(TalkRevisionEntity.Key.class)
class TalkRevisionEntity {
  /** Which version of which entry. */
  record Key(UUID entryId, int version) implements Serializable {}

  /** Who made the revision, when and why. */
  record Cause(UUID editor, Instant at, String reason) {}

  @Id
  @Column(name = "entry_id")
  private UUID entryId;

  @Id private int version;

  @Enumerated(EnumType.STRING)
  private TalkAction action;

  @Column(name = "editor_id")
  private UUID editorId;

  private Instant at;
  private String reason;

  @Enumerated(EnumType.STRING)
  private TalkState state;

  @Convert(converter = WrittenTalkConverter.class)
  @Column(columnDefinition = "jsonb")
  @ColumnTransformer(write = "?::jsonb")
  private WrittenTalk written;

  protected TalkRevisionEntity() {}

  TalkRevisionEntity(TalkEntryEntity entry, TalkAction action, Cause cause) {
    entryId = entry.id();
    version = entry.version();
    state = entry.state();
    written = entry.written();
    this.action = action;
    editorId = cause.editor();
    at = cause.at();
    reason = cause.reason();
  }

  TalkRevision toRevision(String handle) {
    return new TalkRevision(version, action, editorId, handle, at, reason, state, written);
  }
}
