package club.emberwell.consensus.answer;

import club.emberwell.laser.Laser;

/**
 * Who asks, and on which machine.
 *
 * @param member number, 0 = a stranger
 * @param machine number, 0 = none
 * @param laser null where no machine was chosen
 */
public record Reader(long member, long machine, Laser laser) {
  public static final Reader STRANGER = new Reader(0, 0, null);
}
