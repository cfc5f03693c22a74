/**
 * Ranges over the API.
 *
 * <p>Entry points: {@link club.emberwell.api.consensus.ConsensusResource}; {@link
 * club.emberwell.api.consensus.ComparisonResource}.
 */
package club.emberwell.api.consensus;
