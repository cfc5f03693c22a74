package club.emberwell.web.frame;

/**
 * What others are told of a public page before they open it: search engines, and whoever is sent
 * its address.
 *
 * @param path of this server, without parameters that change nothing but order and reader
 * @param description a plain sentence or two with the values
 * @param photo path of a picture of it, or null
 * @param drawn path of a picture that this server draws of it, 1200 to 630 pixels; null = none
 * @param feed path of the feed of the same, or null
 * @param listed whether search engines may list it
 */
public record Preview(
    String path, String description, String photo, String drawn, String feed, boolean listed) {
  /** As much as is shown of a description anywhere. */
  private static final int LONGEST = 300;

  public Preview {
    description = cut(description.strip().replaceAll("\\s+", " "));
  }

  public static Preview of(String path, String description) {
    return new Preview(path, description, null, null, null, true);
  }

  /** The same with a picture of it; null for none. */
  public Preview withPhoto(String other) {
    return new Preview(path, description, other, drawn, feed, listed);
  }

  /** The same with a picture that is drawn of it, where no photo is there; null for none. */
  public Preview withDrawn(String other) {
    return new Preview(path, description, photo, other, feed, listed);
  }

  public Preview withFeed(String other) {
    return new Preview(path, description, photo, drawn, other, listed);
  }

  /** The same for search engines only if they may list it. */
  public Preview listedIf(boolean may) {
    return new Preview(path, description, photo, drawn, feed, listed && may);
  }

  private static String cut(String text) {
    if (text.length() <= LONGEST) {
      return text;
    }
    int end = text.lastIndexOf(' ', LONGEST - 1);
    return text.substring(0, end < LONGEST / 2 ? text.offsetByCodePoints(0, LONGEST / 2) : end)
        + "…";
  }
}
