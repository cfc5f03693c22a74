/**
 * This node's index of trials. Entry points: {@link club.emberwell.search.index.SearchIndex} keeps
 * it true to the database and reads it, {@link club.emberwell.search.index.TrialDocuments} makes
 * its documents, {@link club.emberwell.search.index.Generation} is one index on disk.
 *
 * <p>It holds one document per trial; the trials of a report stand side by side, so that reports
 * are counted by watching the report number change. It is disposable: it is rebuilt beside the old
 * one when it is missing, damaged, of another history or written with other words. A look at the
 * change rows, and whether the database still is the one it was made from, costs three short
 * statements, four times a second; a changed report is loaded once and written once.
 */
package club.emberwell.search.index;
