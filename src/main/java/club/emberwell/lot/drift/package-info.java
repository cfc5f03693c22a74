/**
 * Whether lots of one supplier begin to need another dose, from the right trials of reports that
 * name them.
 *
 * <p>Entry points: {@link club.emberwell.lot.drift.LotDrifts}.
 */
package club.emberwell.lot.drift;
