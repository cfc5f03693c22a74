package club.emberwell.report.photo;

import club.emberwell.entry.EntryRef;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * A picture of a report, a question or an answer, without its bytes.
 *
 * @param of what it belongs to
 * @param called what that is called in lists
 * @param words as its author wrote them
 * @param large of the large size
 */
public record Photo(
    UUID id,
    EntryRef of,
    String called,
    int version,
    PhotoWords words,
    Size large,
    Instant createdAt) {
  /** Where pages load pictures. */
  private static final String PATH = "/photos/";

  /** Pixels. */
  public record Size(int width, int height) {
    /** No side longer than this; as {@link Pixels#within} makes it. */
    Size within(int side) {
      double scale = Math.min(1, (double) side / Math.max(width, height));
      return new Size(
          Math.max(1, (int) Math.round(width * scale)),
          Math.max(1, (int) Math.round(height * scale)));
    }
  }

  /** What can be seen: as its author says, else from what it belongs to is called. */
  public String alt() {
    return words.alt() != null ? words.alt() : made();
  }

  /** Whether nobody said what can be seen. */
  public boolean altMade() {
    return words.alt() == null;
  }

  private String made() {
    if (words.caption() != null) {
      return "Photo: " + words.caption();
    }
    return switch (of.kind()) {
      case QUESTION -> "Photo with the question “" + called + "”";
      case ANSWER -> "Photo with the answer “" + called + "”";
      default ->
          "Photo of " + called.substring(0, 1).toLowerCase(Locale.ROOT) + called.substring(1);
    };
  }

  public String caption() {
    return words.caption();
  }

  public Size size(PhotoSize size) {
    return large.within(size.side());
  }

  public Size thumb() {
    return size(PhotoSize.THUMB);
  }

  public Size middle() {
    return size(PhotoSize.MIDDLE);
  }

  /** Address of a JPEG for pages. */
  public String src(PhotoSize size) {
    return PATH + id + "/" + size.code() + ".jpg";
  }

  public String thumbSrc() {
    return src(PhotoSize.THUMB);
  }

  public String middleSrc() {
    return src(PhotoSize.MIDDLE);
  }

  public String largeSrc() {
    return src(PhotoSize.LARGE);
  }

  /** The sizes there are, the least first: no two of the same. */
  public List<PhotoSize> sizes() {
    return Stream.of(PhotoSize.values())
        .filter(size -> size == PhotoSize.LARGE || size(size).width() < large.width())
        .toList();
  }

  /** For the attribute of an image. */
  public String srcset() {
    return sizes().stream()
        .map(size -> src(size) + " " + size(size).width() + "w")
        .collect(Collectors.joining(", "));
  }
}
