/**
 * The catalog as the database keeps it, and what changes it. Ask {@link
 * club.emberwell.catalog.store.CatalogService#snapshot()} for the current {@link
 * club.emberwell.catalog.Catalog}: it costs nothing and never touches the database. Moderators
 * change things through {@link club.emberwell.catalog.store.TermCare}, {@link
 * club.emberwell.catalog.store.MergeCare} and {@link club.emberwell.catalog.store.CautionCare};
 * {@link club.emberwell.catalog.store.CatalogLoader} brings the files that came with the program.
 */
package club.emberwell.catalog.store;
