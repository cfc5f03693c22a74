/**
 * What somebody searches for, as a value without Lucene. Entry points: {@link
 * club.emberwell.search.query.SearchQuery} is one state of a search, {@link
 * club.emberwell.search.query.SearchQueryCodec} turns addresses into queries and back, {@link
 * club.emberwell.search.query.Facet} and {@link club.emberwell.search.query.RangeField} say what a
 * search can be narrowed by, {@link club.emberwell.search.query.SearchLimits} every limit of the
 * search. Nothing here reads anything but the vocabulary in memory.
 */
package club.emberwell.search.query;
