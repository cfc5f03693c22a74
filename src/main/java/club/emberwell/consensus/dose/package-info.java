/**
 * Ranges by dose instead of settings, across machines.
 *
 * <p>Entry points: {@link club.emberwell.consensus.dose.Window} says from which dose to which it
 * works.
 */
package club.emberwell.consensus.dose;
