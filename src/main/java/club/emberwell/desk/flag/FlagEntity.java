package club.emberwell.desk.flag;

import club.emberwell.entry.Entry;
import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;
import org.hibernate.annotations.Immutable;

/** A flag as stored: one per member and entry. */
@Entity
@Immutable
@Table(name = "desk_flag")
class FlagEntity {
  @Id UUID id;

  @Column(name = "member_id")
  UUID memberId;

  @Column(name = "entry_id")
  UUID entryId;

  @Enumerated(EnumType.STRING)
  FlagReason reason;

  String note;
  String state;

  @Column(name = "created_at")
  Instant createdAt;

  @Column(name = "decided_at")
  Instant decidedAt;

  String outcome;

  Flag toFlag(Entry entry, String by) {
    return new Flag(
        id,
        entry,
        new Entry.Author(memberId, by),
        reason,
        note,
        state,
        createdAt,
        decidedAt == null ? null : new Flag.Settled(decidedAt, outcome));
  }
}
