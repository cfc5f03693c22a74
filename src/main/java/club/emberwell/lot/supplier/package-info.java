/**
 * What members who share their lots say together about those they buy from.
 *
 * <p>Entry points: {@link club.emberwell.lot.supplier.Suppliers}.
 */
package club.emberwell.lot.supplier;
