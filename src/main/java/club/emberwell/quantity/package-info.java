/** Quantities as people type them: read exactly, normalise, print. */
package club.emberwell.quantity;
