package club.emberwell.tag;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.util.UUID;
import org.hibernate.annotations.Immutable;

/** A code and what it was given to; nothing any more where that has gone. */
@Entity
@Immutable
@Table(name = "tag")
class TagEntity {
  @Id private String code;

  @Column(name = "entry_id")
  private UUID entryId;
}
