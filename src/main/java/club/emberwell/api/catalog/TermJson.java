package club.emberwell.api.catalog;

import club.emberwell.api.view.CautionJson;
import club.emberwell.catalog.Catalog;
import club.emberwell.catalog.Term;
import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One entry of the vocabulary.
 *
 * @param synonyms other spellings
 * @param hex colours only
 * @param cautions what is known of it alone, whatever is done to it
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
record TermJson(
    String value,
    String label,
    @JsonUnwrapped Place place,
    List<String> synonyms,
    @Nullable String note,
    @Nullable String hex,
    @Nullable Boolean deprecated,
    List<CautionJson> cautions) {
  /**
   * Where it stands in the tree.
   *
   * @param parent slug of the wider term
   * @param respondsAlike true where everything below it responds as it does and shares its ranges
   */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  record Place(@Nullable String parent, @Nullable Boolean respondsAlike) {
    static Place of(Term term) {
      return new Place(term.parent(), term.respondsAlike() ? Boolean.TRUE : null);
    }
  }

  static TermJson of(Catalog catalog, Term term) {
    List<CautionJson> cautions =
        catalog.cautions().forTerm(term.kind(), term.slug()).stream().map(CautionJson::of).toList();
    return new TermJson(
        term.slug(),
        term.label(),
        Place.of(term),
        term.synonyms(),
        term.note(),
        term.hex(),
        term.deprecated() ? Boolean.TRUE : null,
        cautions);
  }
}
