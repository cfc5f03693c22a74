/** The parser's own door and the dose calculator. */
package club.emberwell.api.quantity;
