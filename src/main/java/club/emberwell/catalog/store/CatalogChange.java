package club.emberwell.catalog.store;

import club.emberwell.catalog.TermKind;
import java.util.Set;

/**
 * What a change touched. Fired as an event inside the changing transaction and returned to the
 * caller, so that entries can be read again: those filed under one of the slugs, and those whose
 * written text folds to one of the spellings.
 *
 * @param version of the catalog once the change is committed
 * @param kind null where only cautions changed
 * @param slugs terms whose meaning, place or cautions changed
 * @param spellings folded texts that now mean something else than before
 */
public record CatalogChange(long version, TermKind kind, Set<String> slugs, Set<String> spellings) {
  public CatalogChange {
    slugs = Set.copyOf(slugs);
    spellings = Set.copyOf(spellings);
  }
}
