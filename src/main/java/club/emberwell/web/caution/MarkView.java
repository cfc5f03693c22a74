package club.emberwell.web.caution;

import club.emberwell.catalog.Caution;
import club.emberwell.catalog.CautionClass;
import club.emberwell.catalog.CautionMark;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The heaviest caution of some work in one line, for places that list many works: the tag {@code
 * cautionMark} places it.
 *
 * @param href its hazard card; null where nobody knows what it is
 * @param more how many more cautions are there
 */
public record MarkView(boolean ban, String sentence, @Nullable String href, int more) {

  /**
   * @param cautions of the work, heaviest first
   * @return null where it has none of its own
   */
  public static @Nullable MarkView of(List<Caution> cautions) {
    return CautionMark.of(cautions).map(MarkView::of).orElse(null);
  }

  public static MarkView of(CautionMark mark) {
    return new MarkView(
        mark.weight() == CautionClass.BAN,
        mark.sentence(),
        mark.term() == null ? null : TermLink.card(mark.term()),
        mark.more());
  }

  /** What stands behind the sentence. */
  public String getRest() {
    return more == 0 ? "Hazard card" : "and " + more + " more";
  }
}
