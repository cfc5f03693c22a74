package club.emberwell.consensus.factor;

import club.emberwell.consensus.range.Group;
import club.emberwell.search.SearchService;
import club.emberwell.search.query.SearchQuery;
import java.util.List;
import java.util.function.Supplier;

/**
 * The factors of all machines, worked out once for as long as the index stays the same.
 *
 * @param works all trials of the club by work
 */
public record KeptFactors(SearchService search, Supplier<List<Group>> works) {
  public MachineFactors now() {
    return search.kept(
        SearchQuery.everything(),
        MachineFactors.class,
        "",
        () -> MachineFactors.of(works.get()),
        f -> 0);
  }
}
