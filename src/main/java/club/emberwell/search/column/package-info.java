/**
 * The numbers of trials, column by column. Entry points: {@link
 * club.emberwell.search.column.Columns} names what every document holds, {@link
 * club.emberwell.search.column.ColumnReader} reads {@link
 * club.emberwell.search.column.TrialColumns} for a query: one look at each doc-value column per
 * matching trial and some 150 bytes for it. The small codes share one long ({@link
 * club.emberwell.search.column.PackedCodes}), so they cost one look together.
 */
package club.emberwell.search.column;
