/**
 * From words and choices to Lucene queries. Entry points: {@link
 * club.emberwell.search.match.QueryParts} for a whole search, {@link
 * club.emberwell.search.match.TextQuery} for its words, {@link club.emberwell.search.match.Words}
 * folds texts, those that are indexed and those that are looked for. A word costs a few looks into
 * the dictionary of each text field; only one that the index does not hold costs a walk for typos.
 */
package club.emberwell.search.match;
