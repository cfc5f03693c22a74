package club.emberwell.report.photo;

import club.emberwell.entry.EntryEntity;
import club.emberwell.entry.EntryPart;
import jakarta.persistence.Embedded;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.util.UUID;

/** The row of a photo. */
@Entity
@Table(name = "photo")
class PhotoEntity extends EntryPart {
  private String caption;
  private String alt;
  private int place;

  @Embedded private PictureColumns picture;

  protected PhotoEntity() {}

  PhotoEntity(EntryEntity entry, int place, PhotoWords words, CleanPicture clean) {
    super(entry);
    this.place = place;
    caption = words.caption();
    alt = words.alt();
    picture = new PictureColumns(clean);
  }

  /** Whether this is that picture of that entry. */
  boolean shows(UUID parent, CleanPicture clean) {
    return entry().parentId().equals(parent) && picture.shows(clean);
  }
}
