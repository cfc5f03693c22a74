/**
 * Searching: the only user of Lucene. Entry point: {@link club.emberwell.search.SearchService}
 * answers a query with hits, facets and ways out of an empty result, or with the columns of every
 * matching trial. Bottom to top: {@code query} (what is searched for), {@code column} (numbers of
 * trials), {@code match} (words and choices as Lucene queries), {@code index} (this node's index),
 * this package (from query to answer), {@code talk} (questions, notices, watches).
 *
 * <p>A query is one pass over the candidates: hits, totals and the counts of all facets come from
 * it. Its cost grows with the documents that miss at most one chosen facet; the counts are kept
 * until the index changes.
 */
package club.emberwell.search;
