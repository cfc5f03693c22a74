package club.emberwell.consensus;

import club.emberwell.consensus.range.Group;
import club.emberwell.search.SearchService;
import club.emberwell.search.query.SearchQuery;
import java.util.List;

/** The trials of searches by key, split once for as long as the index stays the same. */
record KeptGroups(SearchService search) {
  private record Groups(List<Group> all) {
    int trials() {
      return all.isEmpty() ? 0 : all.get(0).columns().size();
    }
  }

  List<Group> of(SearchQuery query) {
    return search
        .kept(
            query,
            Groups.class,
            "all",
            () -> new Groups(Group.split(search.columns(query))),
            Groups::trials)
        .all();
  }
}
