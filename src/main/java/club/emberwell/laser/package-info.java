/** Laser sources, regimes, dose, pulses, spot, transfer between machines, eye limits. Pure. */
package club.emberwell.laser;
