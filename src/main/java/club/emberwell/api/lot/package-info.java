/**
 * A member's lots, and how many to order, over JSON.
 *
 * <p>Entry points: {@link club.emberwell.api.lot.LotResource}.
 */
package club.emberwell.api.lot;
