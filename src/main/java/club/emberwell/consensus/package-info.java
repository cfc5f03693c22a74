/** Ranges over the voices of members. */
package club.emberwell.consensus;
