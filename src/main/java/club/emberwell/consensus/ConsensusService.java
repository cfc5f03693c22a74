package club.emberwell.consensus;

import club.emberwell.search.SearchQuery;
import club.emberwell.search.SearchService;
import club.emberwell.search.TrialColumns;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;

/**
 * Ranges over what a search finds. Costs one pass over the matching trials; nothing is sampled or
 * sketched.
 */
@ApplicationScoped
public class ConsensusService {
  private final SearchService search;

  ConsensusService(SearchService search) {
    this.search = search;
  }

  /** One range per key among the matching trials, most voices first. */
  public List<Range> ranges(SearchQuery query) {
    return ranges(search.columns(query));
  }

  static List<Range> ranges(TrialColumns columns) {
    return Group.split(columns).stream().map(group -> Range.of(group, false)).toList();
  }
}
