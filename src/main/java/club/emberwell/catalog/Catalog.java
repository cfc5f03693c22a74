package club.emberwell.catalog;

/**
 * Everything this package knows at one moment.
 *
 * @param version of the database's catalog; rises with every change
 */
public record Catalog(
    long version, Vocabulary vocabulary, Cautions cautions, ColourNaming colours) {}
