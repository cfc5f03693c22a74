package club.emberwell.report;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;
import org.hibernate.annotations.Generated;
import org.hibernate.generator.EventType;

/** The row of a photo; both pictures are our own JPEGs without metadata. */
@Entity
@Table(name = "photo")
class PhotoEntity {
  @Id private UUID id;

  @Generated(event = EventType.INSERT)
  @Column(insertable = false, updatable = false)
  private Long number;

  @Column(name = "report_id")
  private UUID reportId;

  @Column(name = "member_id")
  private UUID memberId;

  private int width;
  private int height;

  @Column(name = "size_bytes")
  private int sizeBytes;

  private byte[] picture;
  private byte[] thumb;

  @Column(name = "created_at")
  private Instant createdAt;

  @Column(name = "hidden_at")
  private Instant hiddenAt;

  protected PhotoEntity() {}

  PhotoEntity(UUID id, UUID reportId, UUID memberId, CleanPicture clean, Instant now) {
    this.id = id;
    this.reportId = reportId;
    this.memberId = memberId;
    width = clean.width();
    height = clean.height();
    picture = clean.picture();
    thumb = clean.thumb();
    sizeBytes = picture.length + thumb.length;
    createdAt = now;
  }

  UUID reportId() {
    return reportId;
  }

  UUID memberId() {
    return memberId;
  }

  boolean hidden() {
    return hiddenAt != null;
  }

  /** Null: in sight. */
  void hide(Instant since) {
    hiddenAt = since;
  }
}
