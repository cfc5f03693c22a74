package club.emberwell.search.query;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.UUID;
import java.util.stream.Stream;

/**
 * One state of the search page; the address is its canonical form. Equal states are equal: the
 * facets and ranges are kept in one order, values sorted and once each, empty ones left out.
 *
 * @param text what was typed, or empty
 * @param facets chosen values by facet code: OR inside a facet, AND between them
 * @param ranges numeric limits in canonical units by parameter stem ({@code power}, {@code speed})
 * @param near machine to sort or filter by closeness to, or null
 * @param sort {@code relevance}, {@code newest}, {@code near}, {@code quality}, or empty for {@link
 *     Order#usual}
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
  public record Limits(Double min, Double max) {
    boolean isOpen() {
      return min == null && max == null;
    }
  }

  public SearchQuery {
    text = text == null ? "" : text.strip();
    sort = sort == null ? "" : sort;
    facets = ordered(facets);
    ranges = orderedRanges(ranges);
  }

  private static Map<String, List<String>> ordered(Map<String, List<String>> facets) {
    Map<String, List<String>> found = new LinkedHashMap<>();
    codes(facets, Stream.of(Facet.values()).map(Facet::code).toList())
        .forEach(
            code -> {
              List<String> values = List.copyOf(new TreeSet<>(facets.get(code)));
              if (!values.isEmpty()) {
                found.put(code, values);
              }
            });
    return Collections.unmodifiableMap(found);
  }

  private static Map<String, Limits> orderedRanges(Map<String, Limits> ranges) {
    Map<String, Limits> found = new LinkedHashMap<>();
    codes(ranges, RangeField.all().stream().map(RangeField::stem).toList())
        .forEach(
            stem -> {
              if (!ranges.get(stem).isOpen()) {
                found.put(stem, ranges.get(stem));
              }
            });
    return Collections.unmodifiableMap(found);
  }

  private static List<String> codes(Map<String, ?> map, List<String> order) {
    List<String> codes = new ArrayList<>(map.keySet());
    Comparator<String> byPlace =
        Comparator.comparingInt(code -> order.contains(code) ? order.indexOf(code) : order.size());
    codes.sort(byPlace.thenComparing(Comparator.naturalOrder()));
    return codes;
  }

  /** Everything, newest first. */
  public static SearchQuery everything() {
    return new SearchQuery("", Map.of(), Map.of(), null, "", 0, SearchLimits.DEFAULT_SIZE);
  }

  /** True where nothing narrows it. */
  public boolean isEverything() {
    return text.isEmpty() && facets.isEmpty() && ranges.isEmpty();
  }

  /** The same reports whoever reads: without a machine, an order and a size. */
  public SearchQuery unordered() {
    return new SearchQuery(text, facets, ranges, null, "", page, everything().size);
  }

  /** True where it is the first page of everything, or of one value of one facet. */
  public boolean isOneChoice() {
    return page == 0
        && text.isEmpty()
        && ranges.isEmpty()
        && facets.values().stream().mapToInt(List::size).sum() <= 1;
  }

  /** Whether a value of the facet is chosen. */
  public boolean filters(Facet facet) {
    return facets.containsKey(facet.code());
  }

  public SearchQuery withText(String other) {
    return new SearchQuery(other, facets, ranges, near, sort, 0, size);
  }

  /** With exactly these values in a facet, from the first page; none = the facet is dropped. */
  public SearchQuery withFacet(String code, List<String> values) {
    Map<String, List<String>> changed = new TreeMap<>(facets);
    changed.put(code, values);
    return new SearchQuery(text, changed, ranges, near, sort, 0, size);
  }

  /** With one value chosen that was not, or the other way round. */
  public SearchQuery toggled(String code, String value) {
    List<String> values = new ArrayList<>(facets.getOrDefault(code, List.of()));
    if (!values.remove(value)) {
      values.add(value);
    }
    return withFacet(code, values);
  }

  /** With these limits, from the first page; null = the range is dropped. */
  public SearchQuery withRange(String stem, Limits limits) {
    Map<String, Limits> changed = new TreeMap<>(ranges);
    if (limits == null) {
      changed.remove(stem);
    } else {
      changed.put(stem, limits);
    }
    return new SearchQuery(text, facets, changed, near, sort, 0, size);
  }

  public SearchQuery withNear(UUID machine) {
    return new SearchQuery(text, facets, ranges, machine, sort, 0, size);
  }

  public SearchQuery withSort(String other) {
    return new SearchQuery(text, facets, ranges, near, other, 0, size);
  }

  public SearchQuery withPage(int other) {
    return new SearchQuery(text, facets, ranges, near, sort, other, size);
  }

  public SearchQuery withSize(int other) {
    return new SearchQuery(text, facets, ranges, near, sort, 0, other);
  }
}
