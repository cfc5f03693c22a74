package club.emberwell.consensus;

import club.emberwell.consensus.range.Group;
import club.emberwell.consensus.range.RangeKey;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;

/** A work somebody has results with, whatever others say of it. */
public record KnownWork(RangeKey key, int right, int trials) {

  /** Those that came out right at least once, most right trials first. */
  static List<KnownWork> of(List<Group> groups) {
    return groups.stream()
        .map(
            group ->
                new KnownWork(
                    group.key(),
                    (int) Arrays.stream(group.rows()).filter(group::right).count(),
                    group.rows().length))
        .filter(work -> work.right() > 0)
        .sorted(Comparator.comparingInt(KnownWork::right).reversed())
        .toList();
  }
}
