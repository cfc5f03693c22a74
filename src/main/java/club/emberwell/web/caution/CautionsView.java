package club.emberwell.web.caution;

import club.emberwell.catalog.Caution;
import club.emberwell.catalog.CautionClass;
import club.emberwell.catalog.Vocabulary;
import club.emberwell.quantity.UnitPreferences;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;

/**
 * The cautions of a work or a search, by class. None of them says that anything is safe, and none
 * at all does not either.
 */
public record CautionsView(
    List<CautionView> bans, List<CautionView> cares, List<CautionView> notes) {

  public static CautionsView of(
      List<Caution> cautions, Vocabulary vocabulary, UnitPreferences reader) {
    return new CautionsView(
        those(CautionClass.BAN, cautions, vocabulary, reader),
        those(CautionClass.CARE, cautions, vocabulary, reader),
        those(CautionClass.NOTE, cautions, vocabulary, reader));
  }

  private static List<CautionView> those(
      CautionClass weight, List<Caution> cautions, Vocabulary vocabulary, UnitPreferences reader) {
    return cautions.stream()
        .filter(caution -> caution.rule().weight() == weight)
        .map(caution -> CautionView.of(caution, vocabulary, reader))
        .toList();
  }

  /** Only the prohibited: what must stand before everything else on a page. */
  public CautionsView banned() {
    return new CautionsView(bans, List.of(), List.of());
  }

  /** All the others. */
  public CautionsView others() {
    return new CautionsView(List.of(), cares, notes);
  }

  /** All the others but what goes with every job, for which there is a page. */
  public CautionsView particular() {
    return new CautionsView(
        List.of(), cares, notes.stream().filter(note -> !note.about().isEmpty()).toList());
  }

  /** The hazard cards of what they are about, each once. */
  public List<TermLink> getCards() {
    return all().map(CautionView::card).filter(Objects::nonNull).distinct().toList();
  }

  /** Heaviest first. */
  public Stream<CautionView> all() {
    return Stream.of(bans, cares, notes).flatMap(List::stream);
  }

  public boolean isEmpty() {
    return bans.isEmpty() && cares.isEmpty() && notes.isEmpty();
  }
}
