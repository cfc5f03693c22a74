package club.emberwell.report.photo;

import club.emberwell.entry.EntryEntity;
import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.FetchType;
import jakarta.persistence.Id;
import jakarta.persistence.JoinColumn;
import jakarta.persistence.MapsId;
import jakarta.persistence.OneToOne;
import jakarta.persistence.Table;
import java.util.Arrays;
import java.util.UUID;

/** The row of a photo; both pictures are our own JPEGs without metadata. */
@Entity
@Table(name = "photo")
class PhotoEntity {
  @Id private UUID id;

  @MapsId
  @OneToOne(fetch = FetchType.LAZY)
  @JoinColumn(name = "id")
  private EntryEntity entry;

  private int width;
  private int height;

  @Column(name = "size_bytes")
  private int sizeBytes;

  private byte[] picture;
  private byte[] thumb;

  protected PhotoEntity() {}

  PhotoEntity(EntryEntity entry, CleanPicture clean) {
    this.entry = entry;
    width = clean.width();
    height = clean.height();
    picture = clean.picture();
    thumb = clean.thumb();
    sizeBytes = picture.length + thumb.length;
  }

  /** Whether this is that picture of that report. */
  boolean shows(UUID report, CleanPicture clean) {
    return entry.parentId().equals(report) && Arrays.equals(picture, clean.picture());
  }

  Photo toPhoto() {
    return new Photo(entry.id(), entry.parentId(), width, height, sizeBytes, entry.createdAt());
  }
}
