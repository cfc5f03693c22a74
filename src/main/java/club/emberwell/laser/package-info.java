/**
 * Laser sources, regimes and the settings of a trial. Pure.
 *
 * <p>Entry points: {@link club.emberwell.laser.Setting} is the catalogue of settings, {@link
 * club.emberwell.laser.Settings} the values of one trial over it, {@link
 * club.emberwell.laser.Laser} what physics needs of a machine.
 */
package club.emberwell.laser;
