/**
 * What kinds of entries have in common that only their owners see and that need nothing else when
 * they are written.
 *
 * <p>Entry point: {@link club.emberwell.entry.own.OwnEntries}, from which the service of such a
 * kind is made.
 */
package club.emberwell.entry.own;
