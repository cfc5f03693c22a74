package club.emberwell.web.bench;

import club.emberwell.exchange.bench.BenchKind;
import club.emberwell.exchange.bench.CopyOutcome;
import club.emberwell.exchange.bench.CopyOutcome.Fate;
import club.emberwell.exchange.bench.CopyOutcome.Note;
import club.emberwell.exchange.bench.CopyOutcome.Thing;
import java.util.List;
import java.util.Locale;
import java.util.UUID;
import java.util.stream.Stream;

/**
 * What becomes of a copy, for people.
 *
 * @param kinds those of which the copy holds any
 * @param groups what needs a look, first what is not restored
 * @param again the file to go on with; null where all is done
 */
record CopyView(CopyOutcome outcome, String said, List<Row> kinds, List<Group> groups, UUID again) {

  /** How many of a kind become what. */
  record Row(String kind, long fresh, long alike, long beside, long refused) {}

  /** Things of which something is to be said. */
  record Group(String heading, List<Line> lines) {}

  /**
   * A thing.
   *
   * @param path where it is; null while it is not here
   */
  record Line(String name, String kind, String path, List<Note> notes) {}

  static CopyView of(CopyOutcome outcome) {
    return of(outcome, null);
  }

  static CopyView of(CopyOutcome outcome, UUID again) {
    boolean left = outcome.photos().left() > 0;
    return new CopyView(
        outcome,
        said(outcome),
        Stream.of(BenchKind.values())
            .filter(kind -> !outcome.of(kind).isEmpty())
            .map(kind -> row(outcome, kind))
            .toList(),
        Stream.of(
                group("Not restored", outcome, Fate.REFUSED),
                group("Kept beside what you have", outcome, Fate.BESIDE),
                group("New, but something is missing", outcome, Fate.NEW))
            .filter(group -> !group.lines().isEmpty())
            .toList(),
        left ? again : null);
  }

  /** How many come, new or beside. */
  public long coming() {
    return outcome.many(Fate.NEW) + outcome.many(Fate.BESIDE);
  }

  /** Whether there is anything to do. */
  public boolean something() {
    return coming() > 0 || outcome.photos().restored() > 0;
  }

  private static String said(CopyOutcome outcome) {
    String at = outcome.savedAt();
    boolean day = at.matches("\\d{4}-\\d\\d-\\d\\d.*");
    return "of %s%s".formatted(outcome.member(), day ? ", saved " + at.substring(0, 10) : "");
  }

  private static Row row(CopyOutcome outcome, BenchKind kind) {
    return new Row(
        kind.label(),
        many(outcome, kind, Fate.NEW),
        many(outcome, kind, Fate.ALIKE),
        many(outcome, kind, Fate.BESIDE),
        many(outcome, kind, Fate.REFUSED));
  }

  private static long many(CopyOutcome outcome, BenchKind kind, Fate fate) {
    return outcome.of(kind).stream().filter(thing -> thing.fate() == fate).count();
  }

  private static Group group(String heading, CopyOutcome outcome, Fate fate) {
    return new Group(
        heading,
        outcome.things().stream()
            .filter(thing -> thing.fate() == fate)
            .filter(thing -> fate != Fate.NEW || !thing.notes().isEmpty())
            .map(thing -> line(outcome, thing))
            .toList());
  }

  private static Line line(CopyOutcome outcome, Thing thing) {
    boolean here = !outcome.preview() && thing.id() != null;
    return new Line(
        thing.name(),
        "%s, line %d".formatted(thing.kind().label().toLowerCase(Locale.ROOT), thing.line()),
        here ? path(thing) : null,
        thing.notes());
  }

  private static String path(Thing thing) {
    return thing
        .kind()
        .entry()
        .map(kind -> kind.path(thing.id(), null))
        .orElse("/bench/machines/" + thing.id());
  }
}
