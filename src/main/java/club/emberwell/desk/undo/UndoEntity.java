package club.emberwell.desk.undo;

import club.emberwell.desk.rule.RuleCode;
import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;
import org.hibernate.annotations.Immutable;

/** An undo as stored. */
@Entity
@Immutable
@Table(name = "desk_undo")
class UndoEntity {
  @Id UUID id;

  @Column(name = "member_id")
  UUID memberId;

  @Enumerated(EnumType.STRING)
  RuleCode rule;

  Instant since;
  String reason;
  String state;

  @Column(name = "started_by")
  UUID startedBy;

  @Column(name = "started_at")
  Instant startedAt;

  @Column(name = "restored_by")
  UUID restoredBy;

  /**
   * @param about name of the member whose deeds are undone, or null
   * @param by name of who began it
   */
  UndoRun toRun(String about, String by, UndoRun.Progress progress) {
    return new UndoRun(
        id,
        new UndoRun.Subject(memberId, about, rule, since),
        reason,
        state,
        new UndoRun.Start(startedBy, by, startedAt),
        restoredBy,
        progress);
  }
}
