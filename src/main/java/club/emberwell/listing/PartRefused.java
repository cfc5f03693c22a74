package club.emberwell.listing;

/** What is asked for is no part of this list. */
public final class PartRefused extends RuntimeException {
  private static final long serialVersionUID = 1L;

  static final String CURSOR = "/cursor";
  static final String SIZE = "/size";

  private final String pointer;

  PartRefused(String pointer) {
    super(
        pointer.equals(CURSOR)
            ? "This is no cursor of this list. Send next of the page before as it is, or none."
            : "A page has 1 to " + Part.SIZE_MAX + " rows.");
    this.pointer = pointer;
  }

  /** JSON pointer of what is wrong. */
  public String pointer() {
    return pointer;
  }
}
