/**
 * The change rows, which the database writes whenever an entry changes.
 *
 * <p>Entry points: {@link club.emberwell.entry.change.ChangeLog} is read by every node's index,
 * each from its own position; {@link club.emberwell.entry.change.ChangeFollower} hands the rows to
 * readers whose position is in the database.
 */
package club.emberwell.entry.change;
