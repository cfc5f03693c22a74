/**
 * A member's private part: machines first. {@link club.emberwell.bench.Machines} is the door;
 * {@link club.emberwell.bench.FieldReader} reads the fields of any entry and collects remarks.
 */
package club.emberwell.bench;
