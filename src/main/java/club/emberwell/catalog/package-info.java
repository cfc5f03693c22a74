/** Materials, coatings, colours, their synonyms and cautions. */
package club.emberwell.catalog;
