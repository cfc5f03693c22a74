/**
 * The public calculators: dose, eyes and distances, air.
 *
 * <p>Entry points: {@link club.emberwell.web.dose.DosePages}.
 */
package club.emberwell.web.dose;
