package club.emberwell.report.photo;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;

/** The row of the one photo of an entry that only its author sees. */
@Entity
@Table(name = "kept_photo")
class KeptPhotoEntity {
  @Id
  @Column(name = "entry_id")
  private UUID entryId;

  private int width;
  private int height;

  @Column(name = "size_bytes")
  private int sizeBytes;

  private byte[] picture;

  @Column(name = "taken_at")
  private Instant takenAt;

  protected KeptPhotoEntity() {}

  KeptPhotoEntity(UUID entry) {
    entryId = entry;
  }

  void take(Photos.Ready ready, Instant now) {
    width = ready.width();
    height = ready.height();
    picture = ready.picture();
    sizeBytes = picture.length;
    takenAt = now;
  }

  byte[] picture() {
    return picture;
  }

  KeptPhotos.Kept toKept() {
    return new KeptPhotos.Kept(entryId, width, height);
  }
}
