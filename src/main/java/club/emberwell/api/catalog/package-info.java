/**
 * The vocabulary over JSON.
 *
 * <p>Entry points: {@link club.emberwell.api.catalog.VocabularyResource}.
 */
package club.emberwell.api.catalog;
