/**
 * How many blanks to order so that enough of them are usable.
 *
 * <p>Entry points: {@link club.emberwell.lot.order.Ordering}.
 */
package club.emberwell.lot.order;
