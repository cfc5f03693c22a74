/**
 * Pages of a member's lots, and how many to order.
 *
 * <p>Entry points: {@link club.emberwell.web.lot.LotPages}; {@link
 * club.emberwell.web.lot.OrderPages}.
 */
package club.emberwell.web.lot;
