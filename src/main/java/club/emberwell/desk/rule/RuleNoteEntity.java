package club.emberwell.desk.rule;

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

/** What a rule noticed about an entry. */
@Entity
@Immutable
@Table(name = "desk_rule_note")
class RuleNoteEntity {
  @Id Long id;

  @Enumerated(EnumType.STRING)
  RuleCode rule;

  @Column(name = "entry_id")
  UUID entryId;

  String detail;
  String mode;
  String state;
  Instant at;

  RuleNote toNote(Entry entry) {
    return new RuleNote(id, rule, entry, detail, mode, state, at);
  }
}
