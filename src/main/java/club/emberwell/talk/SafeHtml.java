package club.emberwell.talk;

/** HTML that went through the sanitiser; nothing else can make one. */
public final class SafeHtml {
  private final String markup;

  SafeHtml(String markup) {
    this.markup = markup;
  }

  /** Only elements and attributes of {@link Markdown}'s list. */
  public String getMarkup() {
    return markup;
  }

  @Override
  public String toString() {
    return markup;
  }
}
