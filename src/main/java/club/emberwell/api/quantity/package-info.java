/**
 * The parser's own door and the dose calculator.
 *
 * <p>Entry points: {@link club.emberwell.api.quantity.QuantityResource}; {@link
 * club.emberwell.api.quantity.DoseResource}.
 */
package club.emberwell.api.quantity;
