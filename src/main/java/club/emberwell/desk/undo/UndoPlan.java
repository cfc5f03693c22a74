package club.emberwell.desk.undo;

import club.emberwell.desk.rule.RuleCode;
import java.time.Instant;
import java.util.List;
import java.util.UUID;

/**
 * What an undo would do.
 *
 * @param member whose deeds, or null
 * @param rule whose deeds, or null
 * @param counts how many of each step
 * @param first the first {@link DeskLimits#UNDO_SHOWN} of them
 * @param vocabulary how many changes of the vocabulary the member made; those are undone one by one
 *     in their own history
 */
public record UndoPlan(
    UUID member,
    RuleCode rule,
    Instant since,
    List<Count> counts,
    List<Line> first,
    int vocabulary) {
  public UndoPlan {
    counts = List.copyOf(counts);
    first = List.copyOf(first);
  }

  /** How often a step is taken on a kind of thing. */
  public record Count(UndoStep step, String kind, long count) {}

  /** One step on one thing. */
  public record Line(UndoStep step, String kind, UUID id, String title) {}

  public long total() {
    return counts.stream().mapToLong(Count::count).sum();
  }
}
