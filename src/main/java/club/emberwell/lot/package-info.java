/**
 * Deliveries of blanks a member keeps count of: from whom, how many came, how many were usable.
 *
 * <p>Entry points: {@link club.emberwell.lot.Lots}; how many to order is in {@link
 * club.emberwell.lot.order}.
 */
package club.emberwell.lot;
