package club.emberwell.report.reading;

/**
 * A word of the author's and what it was filed as.
 *
 * @param slug null while it waits for filing, or where nothing was written
 * @param written null where nothing was written
 */
public record Filed(String slug, String written) {
  public static final Filed NOTHING = new Filed(null, null);

  public boolean waits() {
    return written != null && slug == null;
  }

  /** As a person says it: "birch plywood" also where a program wrote {@code birch-plywood}. */
  String said() {
    return written.equals(slug) ? slug.replace('-', ' ') : written;
  }
}
