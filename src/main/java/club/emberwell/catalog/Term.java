package club.emberwell.catalog;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One entry of a vocabulary. In SKOS words: label = prefLabel, synonyms = altLabel, parent =
 * broader, replacedBy = dcterms:isReplacedBy.
 *
 * @param slug stable id, lower-case words with dashes; never renamed, never reused
 * @param parent slug of the wider term, null at the top
 * @param respondsAlike whether everything below it responds as it does, so that their trials share
 *     a range
 * @param hex colours only: the anchor as #rrggbb; else null
 */
public record Term(
    TermKind kind,
    String slug,
    @JsonUnwrapped Words words,
    String parent,
    @JsonInclude(JsonInclude.Include.NON_DEFAULT) boolean respondsAlike,
    String hex,
    @JsonUnwrapped Standing standing) {
  public static final String SHARED = "shared";
  public static final String CLUB = "club";

  /**
   * What people call it.
   *
   * @param synonyms other spellings as people type them, without the label
   * @param note a sentence for people, or null
   */
  public record Words(String label, List<String> synonyms, @Nullable String note) {
    public Words {
      synonyms = List.copyOf(synonyms);
    }
  }

  /**
   * Where it comes from and whether it is used.
   *
   * @param deprecated not offered for new entries
   * @param replacedBy slug of the term that stands for this one since a merge, else null
   * @param origin {@code shared} = from the data files, {@code club} = added here
   * @param version counts this term's changes from 1
   */
  public record Standing(
      boolean deprecated, @Nullable String replacedBy, String origin, int version) {
    /** Of a new term. */
    public static Standing first(String origin) {
      return new Standing(false, null, origin, 1);
    }
  }

  public String label() {
    return words.label();
  }

  public List<String> synonyms() {
    return words.synonyms();
  }

  public String note() {
    return words.note();
  }

  public boolean deprecated() {
    return standing.deprecated();
  }

  public String replacedBy() {
    return standing.replacedBy();
  }

  public String origin() {
    return standing.origin();
  }

  public int version() {
    return standing.version();
  }

  /** The same term as a merge would leave it. */
  public Term mergedInto(String winner) {
    Standing merged = new Standing(true, winner, origin(), version());
    return new Term(kind, slug, words, parent, respondsAlike, hex, merged);
  }
}
