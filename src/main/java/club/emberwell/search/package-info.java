/**
 * Finding reports: the only user of Lucene. Entry points: {@link
 * club.emberwell.search.SearchService} answers queries (hits, facets, columns), {@link
 * club.emberwell.search.SearchIndex} keeps this node's index true to the database, {@link
 * club.emberwell.search.SearchQueryCodec} turns addresses into queries and back.
 *
 * <p>The index holds one document per trial; the trials of a report stand side by side, so that
 * reports are counted by watching the report number change and no set of seen reports is needed. A
 * query is one pass over the candidates: hits, totals and the counts of all facets come from it.
 * Its cost grows with the documents that miss at most one chosen facet; the counts are kept until
 * the index changes. Columns cost one read of each doc-value column per matching trial.
 *
 * <p>The index is disposable: it is rebuilt beside the old one when it is missing, damaged, of
 * another history or written with other words.
 */
package club.emberwell.search;
