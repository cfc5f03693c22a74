package club.emberwell.catalog.store;

import club.emberwell.catalog.TermKind;
import club.emberwell.remark.Coded;
import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;

/** A text that matched no term, waiting to be filed. */
@Entity
@Table(name = "unfiled")
class UnfiledEntity {
  @Id UUID id;
  String kind;
  String written;
  String folded;
  int count;

  @Column(name = "first_seen")
  Instant firstSeen;

  @Column(name = "last_seen")
  Instant lastSeen;

  String state;

  @Column(name = "filed_to")
  String filedTo;

  int version = 1;

  Unfiled toUnfiled() {
    return new Unfiled(
        id,
        Coded.of(TermKind.class, kind).orElseThrow(),
        written,
        count,
        firstSeen,
        lastSeen,
        state,
        filedTo);
  }
}
