package club.emberwell.grid.photo;

import club.emberwell.report.photo.Photos;
import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;
import java.util.stream.DoubleStream;

/** The row of a grid's photo: our own JPEG without metadata. */
@Entity
@Table(name = "grid_photo")
class GridPhotoEntity {
  @Id
  @Column(name = "grid_id")
  private UUID gridId;

  private int width;
  private int height;

  @Column(name = "size_bytes")
  private int sizeBytes;

  private byte[] picture;

  /** x and y of the four, clockwise from the top left; null where they are not marked. */
  private double[] corners;

  @Column(name = "shown_id")
  private UUID shownId;

  @Column(name = "taken_at")
  private Instant takenAt;

  protected GridPhotoEntity() {}

  GridPhotoEntity(UUID grid) {
    gridId = grid;
  }

  void take(Photos.Ready ready, Instant now) {
    width = ready.width();
    height = ready.height();
    picture = ready.picture();
    sizeBytes = picture.length;
    corners = null;
    shownId = null;
    takenAt = now;
  }

  void mark(Corners marked) {
    corners =
        marked.all().stream()
            .flatMapToDouble(spot -> DoubleStream.of(spot.x(), spot.y()))
            .toArray();
  }

  void shown(UUID photo) {
    shownId = photo;
  }

  byte[] picture() {
    return picture;
  }

  GridPhoto toPhoto() {
    return new GridPhoto(gridId, width, height, marked(corners), shownId, takenAt);
  }

  private static Corners marked(double[] xy) {
    return xy == null
        ? null
        : new Corners(
            new Spot(xy[0], xy[1]),
            new Spot(xy[2], xy[3]),
            new Spot(xy[4], xy[5]),
            new Spot(xy[6], xy[7]));
  }
}
