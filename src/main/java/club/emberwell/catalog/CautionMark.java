package club.emberwell.catalog;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * The heaviest caution of some work in one sentence, for lists and files that have no room for all
 * of them. Notes and what goes with every work stand where there is room.
 *
 * @param codes ids of all that are at least special care, heaviest first
 * @param term through which it goes, whose hazard card says the rest; null for words that the
 *     vocabulary does not hold
 */
public record CautionMark(
    CautionClass weight, String sentence, List<String> codes, @Nullable Term term) {

  /**
   * @param cautions of the work, heaviest first
   */
  public static Optional<CautionMark> of(List<Caution> cautions) {
    List<Caution> grave =
        cautions.stream()
            .filter(c -> !c.isGeneral() && c.rule().weight() != CautionClass.NOTE)
            .toList();
    if (grave.isEmpty()) {
      return Optional.empty();
    }
    Caution heaviest = grave.get(0);
    return Optional.of(
        new CautionMark(
            heaviest.rule().weight(),
            sentence(heaviest),
            grave.stream().map(c -> c.rule().id()).toList(),
            heaviest.because().orElse(null)));
  }

  private static String sentence(Caution caution) {
    CautionRule rule = caution.rule();
    String start = rule.isBan() ? "Prohibited" : "Caution";
    return caution.about().map(about -> start + ", " + about + ": ").orElse(start + ": ")
        + rule.hazard()
        + (rule.evidence().disputed() ? " (sources disagree)." : ".");
  }

  /** How many more stand behind the one told. */
  public int more() {
    return codes.size() - 1;
  }

  /** Codes as one cell of a table. */
  public String coded() {
    return String.join(" ", codes);
  }
}
