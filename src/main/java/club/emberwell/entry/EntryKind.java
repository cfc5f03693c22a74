package club.emberwell.entry;

import club.emberwell.remark.Coded;
import jakarta.persistence.EnumeratedValue;
import java.util.EnumSet;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;

/** What members write. */
public enum EntryKind implements Coded {
  REPORT("report", "Report", "this report", "/reports/%s"),
  QUESTION("question", "Question", "this", "/ask/%s"),
  ANSWER("answer", "Answer", "this", "/ask/%2$s?answer=%1$s#answer-%1$s"),
  NOTICE("notice", "Notice", "this", "/notices/%s"),
  COMMENT("comment", "Comment", "this", "/reports/%2$s?comment=%1$s#comment-%1$s"),
  PHOTO("photo", "Photo", "this", "/photos/%s"),
  GRID("grid", "Test grid", "this grid", "/grids/%s"),
  SAMPLE("sample", "Sample", "this sample", "/samples/%s"),
  LOT("lot", "Lot", "this lot", "/lots/%s"),
  RECIPE("recipe", "Recipe", "this recipe", "/recipes/%s"),
  EYEWEAR("eyewear", "Glasses", "this pair", "/eyewear/%s"),
  ROOM("room", "Room", "this room", "/rooms/%s"),
  FIXTURE("fixture", "Fixture", "this fixture", "/fixtures/%s");

  public static final Set<EntryKind> TALK =
      Set.copyOf(EnumSet.of(QUESTION, ANSWER, NOTICE, COMMENT));

  /** Words alone, without a title, below what they are about. */
  public static final Set<EntryKind> REPLIES = Set.copyOf(EnumSet.of(ANSWER, COMMENT));

  /** What photos belong to. */
  public static final Set<EntryKind> PICTURED = Set.copyOf(EnumSet.of(REPORT, QUESTION, ANSWER));

  /** Kept by their authors for themselves: nobody else sees them, moderators neither. */
  public static final Set<EntryKind> PRIVATE =
      Set.copyOf(EnumSet.of(GRID, SAMPLE, LOT, RECIPE, EYEWEAR, ROOM, FIXTURE));

  /** Kept with one photo, which nobody but their authors sees either. */
  public static final Set<EntryKind> KEPT_WITH_PHOTO = Set.copyOf(EnumSet.of(LOT, FIXTURE));

  /** What others may see, and the desk looks after. */
  public static final Set<EntryKind> SHARED =
      Set.copyOf(EnumSet.complementOf(EnumSet.copyOf(PRIVATE)));

  /** What counts as an entry of its own where it is asked how much a member posted. */
  public static final Set<EntryKind> POSTS =
      SHARED.stream().filter(kind -> kind != PHOTO).collect(Collectors.toUnmodifiableSet());

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
  @Override
  public String code() {
    return code;
  }

  public String label() {
    return label;
  }

  /** Whether only its author may see one. */
  public boolean isPrivate() {
    return PRIVATE.contains(this);
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
}
