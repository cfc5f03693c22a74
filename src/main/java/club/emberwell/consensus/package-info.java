/**
 * What the members' trials say together, and why.
 *
 * <p>Entry points: {@link club.emberwell.consensus.ConsensusService}: {@code ranges} is the cheap
 * core, {@code details} everything; {@link club.emberwell.consensus.Explain} says it in words.
 */
package club.emberwell.consensus;
