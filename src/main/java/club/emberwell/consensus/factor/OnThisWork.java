package club.emberwell.consensus.factor;

/**
 * What the factor of a machine makes of a work it never did.
 *
 * @param factor of the machine
 * @param times the dose for this machine over the middle of members' right results; not just the
 *     factor, since the machines behind that middle have factors of their own
 */
public record OnThisWork(MachineFactor factor, double times) {}
