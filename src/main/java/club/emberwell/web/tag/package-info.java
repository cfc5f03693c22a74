/**
 * Where a scanned label leads.
 *
 * <p>Entry points: {@link club.emberwell.web.tag.TagPages}.
 */
package club.emberwell.web.tag;
