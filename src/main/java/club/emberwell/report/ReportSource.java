package club.emberwell.report;

import java.util.Collection;
import java.util.List;
import java.util.UUID;
import java.util.stream.Stream;

/**
 * Reads whole reports for those who index, count or show them; two statements whatever the size.
 */
public interface ReportSource {

  /** The current state of these reports, missing ones left out, in no particular order. */
  List<ReportSnapshot> byIds(Collection<UUID> ids);

  /** The same for many readers: what did not change since is not read again. */
  default List<ReportSnapshot> shown(Collection<UUID> ids) {
    return byIds(ids);
  }

  /** The next LIVE reports by number behind {@code after}, for a rebuild. */
  List<ReportSnapshot> liveAfter(long after, int most);

  /** Every LIVE report by number, so many read at once. */
  default Stream<ReportSnapshot> live(int most) {
    return Stream.iterate(
            liveAfter(0, most),
            some -> !some.isEmpty(),
            some -> liveAfter(some.get(some.size() - 1).number(), most))
        .flatMap(List::stream);
  }
}
