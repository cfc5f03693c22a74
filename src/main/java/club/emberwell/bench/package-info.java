/** A member's private part: machines first. */
package club.emberwell.bench;
