/**
 * How a machine stands to those of other members in all that was right on it, and what that makes
 * of a work it never did.
 *
 * <p>Entry points: {@link club.emberwell.consensus.factor.MachineFactors} and {@link
 * club.emberwell.consensus.factor.KeptFactors}. Pure but for the latter.
 */
package club.emberwell.consensus.factor;
