/**
 * Eyes and air beside a laser, by the printed tables. Pure.
 *
 * <p>Entry points: {@link club.emberwell.laser.safety.EyeLimits}, {@link
 * club.emberwell.laser.safety.Eyewear} and {@link club.emberwell.laser.safety.En207}, {@link
 * club.emberwell.laser.safety.HazardDistance}, {@link club.emberwell.laser.safety.Ventilation}.
 */
package club.emberwell.laser.safety;
