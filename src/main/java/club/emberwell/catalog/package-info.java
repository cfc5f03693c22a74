/**
 * Materials, coatings, colours and named defects with their synonyms, and the cautions that go with
 * them.
 *
 * <p>Ask {@link club.emberwell.catalog.CatalogService#snapshot()} for the current {@link
 * club.emberwell.catalog.Catalog}: an immutable value (a few hundred terms, some thousand synonyms)
 * that costs nothing to ask and never touches the database. {@link
 * club.emberwell.catalog.Vocabulary} resolves text, {@link club.emberwell.catalog.Cautions} answers
 * what to heed, {@link club.emberwell.catalog.ColourNaming} names hex codes. Moderators change
 * things through {@link club.emberwell.catalog.TermCare} and {@link
 * club.emberwell.catalog.CautionCare}.
 */
package club.emberwell.catalog;
