package club.emberwell.desk;

import java.util.Optional;
import java.util.stream.Stream;

/** What can be flagged and decided about. */
public enum ItemKind {
  REPORT("report", "Report"),
  QUESTION("question", "Question"),
  ANSWER("answer", "Answer"),
  NOTICE("notice", "Notice"),
  PHOTO("photo", "Photo");

  private final String code;
  private final String label;

  ItemKind(String code, String label) {
    this.code = code;
    this.label = label;
  }

  /** The word in the API, in addresses and in the database. */
  public String code() {
    return code;
  }

  public String label() {
    return label;
  }

  public static Optional<ItemKind> of(String code) {
    return Stream.of(values()).filter(kind -> kind.code.equals(code)).findFirst();
  }
}
