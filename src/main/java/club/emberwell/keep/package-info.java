/**
 * Backups: one archive of all that a club is, and a club made of it again.
 *
 * <p>Entry points: {@link club.emberwell.keep.Backup} writes an archive, {@link
 * club.emberwell.keep.Restore} makes a database of one, {@link club.emberwell.keep.Archive} reads
 * one. Nothing here needs a tool of the machine or a superuser.
 */
package club.emberwell.keep;
