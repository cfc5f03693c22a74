package club.emberwell.entry;

import jakarta.persistence.EnumeratedValue;
import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Stream;

/** What members write. */
public enum EntryKind {
  REPORT("report", "Report", "this report", "/reports/%s"),
  QUESTION("question", "Question", "this", "/ask/%s"),
  ANSWER("answer", "Answer", "this", "/ask/%2$s?answer=%1$s#answer-%1$s"),
  NOTICE("notice", "Notice", "this", "/notices/%s"),
  PHOTO("photo", "Photo", "this", "/reports/%2$s#photos");

  public static final Set<EntryKind> TALK = Set.copyOf(EnumSet.of(QUESTION, ANSWER, NOTICE));

  @EnumeratedValue private final String code;
  private final String label;
  private final String said;
  private final String path;

  EntryKind(String code, String label, String said, String path) {
    this.code = code;
    this.label = label;
    this.said = said;
    this.path = path;
  }

  /** The word in the API, in addresses and in the database. */
  public String code() {
    return code;
  }

  public String label() {
    return label;
  }

  /** How a sentence to a person points to one. */
  String said() {
    return said;
  }

  /**
   * Where people read one: a path of this server.
   *
   * @param parent what it belongs to, or null
   */
  public String path(UUID id, UUID parent) {
    return path.formatted(id, parent);
  }

  public static Optional<EntryKind> of(String code) {
    return Stream.of(values()).filter(kind -> kind.code.equals(code)).findFirst();
  }
}
