package club.emberwell.catalog.store;

import club.emberwell.catalog.Catalog;
import club.emberwell.catalog.Caution;
import club.emberwell.catalog.CautionRule;
import club.emberwell.catalog.TermKind;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.RemarkId;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;

/**
 * Sees to it that moving or merging a term lifts no prohibition: only the removal of the caution
 * itself does, and that takes two moderators.
 */
final class BanGuard {
  private BanGuard() {}

  /** Refuses where anything below the term was prohibited before and would not be afterwards. */
  static void check(TermKind kind, String slug, Catalog before, Catalog after) {
    Set<String> below = new TreeSet<>(before.vocabulary().descendants(kind, slug));
    for (String each : below) {
      Set<String> lifted = bans(before, kind, each);
      lifted.removeAll(bans(after, kind, each));
      if (!lifted.isEmpty()) {
        throw new EntryRefused(
            RemarkId.PROHIBITION_LIFTED,
            "",
            "This would allow %s again (%s). First remove that caution."
                .formatted(each, String.join(", ", lifted)));
      }
    }
  }

  private static Set<String> bans(Catalog catalog, TermKind kind, String slug) {
    return catalog.cautions().forTerm(kind, slug).stream()
        .map(Caution::rule)
        .filter(CautionRule::isBan)
        .map(CautionRule::id)
        .collect(Collectors.toCollection(TreeSet::new));
  }
}
