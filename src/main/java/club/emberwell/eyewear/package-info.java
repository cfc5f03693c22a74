/**
 * A member's laser glasses by what is printed on them, and what they do for each of the member's
 * machines. {@link club.emberwell.eyewear.OwnEyewear} is the door, {@link
 * club.emberwell.eyewear.EyeProtection} the answer for one machine.
 */
package club.emberwell.eyewear;
