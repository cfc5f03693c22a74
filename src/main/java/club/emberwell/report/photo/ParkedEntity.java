package club.emberwell.report.photo;

import jakarta.persistence.Column;
import jakarta.persistence.Embedded;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;

/** The row of a picture of a form that is not stored yet. */
@Entity
@Table(name = "parked_photo")
class ParkedEntity {
  @Id private UUID id;

  @Column(name = "member_id")
  private UUID memberId;

  @Column(name = "form_id")
  private UUID formId;

  private int place;
  private String caption;
  private String alt;

  @Embedded private PictureColumns picture;

  @Column(name = "parked_at")
  private Instant parkedAt;

  protected ParkedEntity() {}

  ParkedEntity(UUID id, UUID memberId, UUID formId, int place, CleanPicture clean) {
    this.id = id;
    this.memberId = memberId;
    this.formId = formId;
    this.place = place;
    picture = new PictureColumns(clean);
    parkedAt = Instant.now();
  }

  void say(PhotoWords words) {
    caption = words.caption();
    alt = words.alt();
  }

  Photos.Added toAdded(Instant at) {
    return new Photos.Added(id, new Photos.Ready(picture.toClean()), words(), at);
  }

  private PhotoWords words() {
    return new PhotoWords(caption, alt);
  }

  CleanPicture clean() {
    return picture.toClean();
  }
}
