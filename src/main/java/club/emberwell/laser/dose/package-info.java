/**
 * What follows from a laser and its settings. Pure.
 *
 * <p>Entry points: {@link club.emberwell.laser.dose.Dose} by the formulas of {@link
 * club.emberwell.laser.dose.DoseFormula}, {@link club.emberwell.laser.dose.Plausibility} for what
 * is odd about a trial, {@link club.emberwell.laser.dose.Transfer} from one machine to another.
 */
package club.emberwell.laser.dose;
