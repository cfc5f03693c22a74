package club.emberwell.exchange.bench;

import club.emberwell.entry.EntryKind;
import club.emberwell.remark.Coded;
import java.util.List;
import java.util.Optional;

/**
 * What lies on a bench, each kind behind those it names: the one list that saving, the readable
 * copy, preview, restore and their tests go over. A new kind is a line here, a schema in {@code
 * shared/schemas/bench}, a list of its name among those of a member's data, and a service that is
 * {@link club.emberwell.entry.ComesBack}.
 */
public enum BenchKind implements Coded {
  MACHINE("machine", "machines", "Machines", "/name", null, List.of()),
  GRID(
      "grid",
      "grids",
      "Test grids",
      "/name",
      EntryKind.GRID,
      List.of(Ref.to("/machine", "machine"))),
  FIXTURE("fixture", "fixtures", "Fixtures", "/name", EntryKind.FIXTURE, List.of()),
  EYEWEAR("eyewear", "eyewear", "Glasses", "/name", EntryKind.EYEWEAR, List.of()),
  ROOM(
      "room", "rooms", "Rooms", "/name", EntryKind.ROOM, List.of(Ref.each("/machines", "machine"))),
  RECIPE(
      "recipe",
      "recipes",
      "Recipes",
      "/name",
      EntryKind.RECIPE,
      List.of(
          Ref.to("/machine", "machine"),
          Ref.to("/fixture", "fixture"),
          Ref.to("/room", "room"),
          Ref.to("/cameFrom/report", "report"),
          Ref.to("/cameFrom/grid", "grid"),
          Ref.to("/cameFrom/recipe", "recipe"))),
  SAMPLE(
      "sample",
      "samples",
      "Samples",
      "/what",
      EntryKind.SAMPLE,
      List.of(Ref.to("/report", "report"), Ref.to("/grid", "grid"))),
  LOT("lot", "lots", "Lots", null, EntryKind.LOT, List.of());

  private final String code;
  private final String list;
  private final String label;
  private final String name;
  private final EntryKind entry;
  private final List<Ref> refs;

  /**
   * @param list how its files are called
   * @param name where its words say what it is called; null = in several places
   * @param entry null where it is none
   * @param refs what its words name
   */
  BenchKind(String code, String list, String label, String name, EntryKind entry, List<Ref> refs) {
    this.code = code;
    this.list = list;
    this.label = label;
    this.name = name;
    this.entry = entry;
    this.refs = refs;
  }

  /**
   * A place in the words of a kind that names another thing.
   *
   * @param pointer of the id, or of a list of ids
   * @param to code of a kind; "report" is none on the bench
   * @param many whether it is a list; what is named there must still be in use
   */
  record Ref(String pointer, String to, boolean many) {
    static Ref to(String pointer, String kind) {
      return new Ref(pointer, kind, false);
    }

    static Ref each(String pointer, String kind) {
      return new Ref(pointer, kind, true);
    }
  }

  @Override
  public String code() {
    return code;
  }

  /** What people call several. */
  public String label() {
    return label;
  }

  /** Its lines in the file. */
  public String lines() {
    return list + ".jsonl";
  }

  /** The same among all of a member's data. */
  String ofMember() {
    return list + ".json";
  }

  /** Where a picture of one stands in the file. */
  String picture(Object id) {
    return "pictures/%s/%s.jpg".formatted(list, id);
  }

  String schema() {
    return code + ".schema.json";
  }

  /** Where its words say what it is called. */
  Optional<String> called() {
    return Optional.ofNullable(name);
  }

  /** Empty for machines. */
  public Optional<EntryKind> entry() {
    return Optional.ofNullable(entry);
  }

  List<Ref> refs() {
    return refs;
  }
}
