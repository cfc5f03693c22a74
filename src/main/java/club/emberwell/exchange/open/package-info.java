/**
 * All that the club shares, as files for anybody's own sums: a Data Package (CSV with its schema,
 * the same as JSON lines, vocabularies as SKOS), signed, made by night and on demand.
 *
 * <p>Entry points: {@link club.emberwell.exchange.open.PackageMaker} makes it, {@link
 * club.emberwell.exchange.open.PackageShelf} hands it out; {@link
 * club.emberwell.exchange.open.SearchExport} writes one search in the same columns.
 */
package club.emberwell.exchange.open;
