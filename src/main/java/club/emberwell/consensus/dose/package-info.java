/**
 * Ranges by dose instead of settings, across machines.
 *
 * <p>Entry points: {@link club.emberwell.consensus.dose.Window} says from which dose to which it
 * works, {@link club.emberwell.consensus.dose.OnMyMachine} what that is on another machine.
 */
package club.emberwell.consensus.dose;
