package club.emberwell.search.talk;

import java.util.Collection;
import java.util.List;
import java.util.UUID;
import java.util.stream.Stream;

/** Reads what members ask and announce, for the index; two statements whatever the size. */
public interface TalkSource {
  /**
   * The live questions and notices behind these ids; an answer leads to its question, whatever is
   * not live is left out.
   */
  List<TalkText> byIds(Collection<UUID> ids);

  /** The next live ones by number, for a rebuild. */
  List<TalkText> liveAfter(long number, int most);

  /** Every live one by number, so many read at once. */
  default Stream<TalkText> live(int most) {
    return Stream.iterate(
            liveAfter(0, most),
            some -> !some.isEmpty(),
            some -> liveAfter(some.get(some.size() - 1).number(), most))
        .flatMap(List::stream);
  }
}
