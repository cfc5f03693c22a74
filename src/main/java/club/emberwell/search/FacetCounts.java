package club.emberwell.search;

import club.emberwell.search.query.Facet;
import java.util.Map;

/**
 * How many reports have each value.
 *
 * @param reports matching reports
 * @param trials matching trials
 * @param byFacet reports by index value; a facet's counts ignore its own choice
 * @param without reports there would be without the choice in a facet
 */
record FacetCounts(
    int reports,
    int trials,
    Map<Facet, Map<String, Integer>> byFacet,
    Map<Facet, Integer> without) {}
