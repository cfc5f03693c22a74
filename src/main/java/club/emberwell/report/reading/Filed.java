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
}
