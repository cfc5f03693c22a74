package club.emberwell.report.photo;

import club.emberwell.entry.EntryEntity;
import jakarta.persistence.Embedded;
import jakarta.persistence.Entity;
import jakarta.persistence.FetchType;
import jakarta.persistence.Id;
import jakarta.persistence.JoinColumn;
import jakarta.persistence.MapsId;
import jakarta.persistence.OneToOne;
import jakarta.persistence.Table;
import java.util.UUID;

/** The row of a photo. */
@Entity
@Table(name = "photo")
class PhotoEntity {
  @Id private UUID id;

  @MapsId
  @OneToOne(fetch = FetchType.LAZY)
  @JoinColumn(name = "id")
  private EntryEntity entry;

  private String caption;
  private String alt;
  private int place;

  @Embedded private PictureColumns picture;

  protected PhotoEntity() {}

  PhotoEntity(EntryEntity entry, int place, PhotoWords words, CleanPicture clean) {
    this.entry = entry;
    this.place = place;
    caption = words.caption();
    alt = words.alt();
    picture = new PictureColumns(clean);
  }

  /** Whether this is that picture of that entry. */
  boolean shows(UUID parent, CleanPicture clean) {
    return entry.parentId().equals(parent) && picture.shows(clean);
  }
}
