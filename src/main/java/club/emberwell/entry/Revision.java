package club.emberwell.entry;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.function.BiFunction;
import java.util.function.Function;

/**
 * One version of an entry.
 *
 * @param editorId null = a rule, or the server itself
 * @param editor handle of that member
 * @param reason null where none was given
 */
public record Revision<W>(
    int version,
    EntryAction action,
    UUID editorId,
    String editor,
    Instant at,
    String reason,
    EntryState state,
    W written) {

  <V> Revision<V> with(Function<W, V> read) {
    return new Revision<>(
        version, action, editorId, editor, at, reason, state, read.apply(written));
  }

  /** A version beside what it changed of the one before. */
  public record Step<W>(Revision<W> revision, Difference changes) {}

  /**
   * Every version beside what it changed; the oldest one changed nothing.
   *
   * @param revisions newest first
   */
  public static <W> List<Step<W>> steps(
      List<Revision<W>> revisions, BiFunction<W, W, Difference> between) {
    List<Step<W>> steps = new ArrayList<>();
    for (int i = 0; i < revisions.size(); i++) {
      Revision<W> before = revisions.get(Math.min(i + 1, revisions.size() - 1));
      Revision<W> now = revisions.get(i);
      steps.add(new Step<>(now, between.apply(before.written(), now.written())));
    }
    return List.copyOf(steps);
  }
}
