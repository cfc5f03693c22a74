/**
 * What tags lead to, over JSON.
 *
 * <p>Entry points: {@link club.emberwell.api.tag.TagResource}.
 */
package club.emberwell.api.tag;
