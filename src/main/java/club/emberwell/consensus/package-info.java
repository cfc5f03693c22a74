/**
 * Ranges over the voices of members.
 *
 * <p>Entry points: {@link club.emberwell.consensus.ConsensusService}: {@code ranges} is the cheap
 * core, {@code details} everything; {@link club.emberwell.consensus.Window} and {@link
 * club.emberwell.consensus.OnMyMachine} say what a range is good for.
 */
package club.emberwell.consensus;
