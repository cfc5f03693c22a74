package club.emberwell.report.photo;

import jakarta.persistence.Column;
import jakarta.persistence.Embeddable;
import java.util.Arrays;

/** A picture in its sizes; all are our own JPEGs without metadata. */
@Embeddable
class PictureColumns {
  private int width;
  private int height;

  @Column(name = "size_bytes")
  private int sizeBytes;

  private byte[] picture;
  private byte[] middle;
  private byte[] thumb;

  protected PictureColumns() {}

  PictureColumns(CleanPicture clean) {
    width = clean.width();
    height = clean.height();
    picture = clean.picture();
    middle = clean.middle();
    thumb = clean.thumb();
    sizeBytes = picture.length + thumb.length + (middle == null ? 0 : middle.length);
  }

  CleanPicture toClean() {
    return new CleanPicture(width, height, picture, middle, thumb);
  }

  boolean shows(CleanPicture clean) {
    return Arrays.equals(picture, clean.picture());
  }

  int width() {
    return width;
  }

  int height() {
    return height;
  }

  int sizeBytes() {
    return sizeBytes;
  }
}
