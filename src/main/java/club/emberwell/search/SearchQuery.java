package club.emberwell.search;

import java.util.List;
import java.util.Map;
import java.util.UUID;

/**
 * One state of the search page; the address is its canonical form.
 *
 * @param text what was typed, or empty
 * @param facets chosen values by facet code: OR inside a facet, AND between them
 * @param ranges numeric limits in canonical units by parameter stem ({@code power}, {@code speed})
 * @param near machine to sort or filter by closeness to, or null
 * @param sort {@code relevance}, {@code newest}, {@code near}
 * @param page from 0
 * @param size hits a page
 */
public record SearchQuery(
    String text,
    Map<String, List<String>> facets,
    Map<String, Limits> ranges,
    UUID near,
    String sort,
    int page,
    int size) {

  /** Inclusive limits in canonical units; null = open. */
  public record Limits(Double min, Double max) {}
}
