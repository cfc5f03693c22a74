package club.emberwell.catalog;

import java.util.List;

/**
 * One entry of a vocabulary. In SKOS words: label = prefLabel, synonyms = altLabel, parent =
 * broader, replacedBy = dcterms:isReplacedBy.
 *
 * @param slug stable id, lower-case words with dashes; never renamed, never reused
 * @param parent slug of the wider term, null at the top
 * @param synonyms other spellings as people type them, without the label
 * @param note a sentence for people, or null
 * @param hex colours only: the anchor as #rrggbb; else null
 * @param deprecated not offered for new entries
 * @param replacedBy slug of the term that stands for this one since a merge, else null
 * @param origin {@code shared} = from the data files, {@code club} = added here
 * @param version counts this term's changes from 1
 */
public record Term(
    TermKind kind,
    String slug,
    String label,
    String parent,
    List<String> synonyms,
    String note,
    String hex,
    boolean deprecated,
    String replacedBy,
    String origin,
    int version) {
  public static final String SHARED = "shared";
  public static final String CLUB = "club";

  public Term {
    synonyms = List.copyOf(synonyms);
  }
}
