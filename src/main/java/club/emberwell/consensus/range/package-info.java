/**
 * One voice for each member, and the range their settings span.
 *
 * <p>Entry points: {@link club.emberwell.consensus.range.Group} is what is compared, {@link
 * club.emberwell.consensus.range.VoiceSet} its voices, {@link club.emberwell.consensus.range.Range}
 * what comes of them.
 */
package club.emberwell.consensus.range;
