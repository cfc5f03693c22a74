package club.emberwell.api.view;

import club.emberwell.report.photo.Photo;
import club.emberwell.report.photo.PhotoSize;
import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A photo and where to load it.
 *
 * @param url of the large size
 * @param thumb of the small one
 * @param width of the large size, pixels
 * @param height of the large size, pixels
 * @param sizes every size there is, the least first
 */
public record PhotoJson(
    UUID id,
    String url,
    String thumb,
    int width,
    int height,
    @JsonUnwrapped Said said,
    List<Size> sizes,
    Instant createdAt) {

  /**
   * What is said of it.
   *
   * @param version for If-Match
   * @param alt what can be seen, for those who do not see it
   * @param altMade whether nobody wrote that, so that it is said from the work
   */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  public record Said(int version, @Nullable String caption, String alt, boolean altMade) {}

  /** One of its sizes; width and height in pixels. */
  public record Size(String url, int width, int height) {}

  public static PhotoJson of(Photo photo) {
    return new PhotoJson(
        photo.id(),
        url(photo, PhotoSize.LARGE),
        url(photo, PhotoSize.THUMB),
        photo.large().width(),
        photo.large().height(),
        new Said(photo.version(), photo.caption(), photo.alt(), photo.altMade()),
        photo.sizes().stream()
            .map(
                size ->
                    new Size(url(photo, size), photo.size(size).width(), photo.size(size).height()))
            .toList(),
        photo.createdAt());
  }

  /** Those of one entry. */
  public static List<PhotoJson> all(List<Photo> photos) {
    return photos.stream().map(PhotoJson::of).toList();
  }

  private static String url(Photo photo, PhotoSize size) {
    String all = "/api/v1/" + photo.of().kind().code() + "s/" + photo.of().id() + "/photos/";
    return all + photo.id() + (size == PhotoSize.LARGE ? "" : "?size=" + size.code());
  }
}
