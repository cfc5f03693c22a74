/**
 * Materials, coatings, colours and named defects with their synonyms, and the cautions that go with
 * them: immutable values. {@link club.emberwell.catalog.Vocabulary} resolves text, {@link
 * club.emberwell.catalog.Cautions} answers what to heed, {@link
 * club.emberwell.catalog.ColourNaming} names hex codes; {@link club.emberwell.catalog.Catalog}
 * holds the three. The package {@code store} keeps them.
 */
package club.emberwell.catalog;
