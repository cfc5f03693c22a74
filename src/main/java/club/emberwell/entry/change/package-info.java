/**
 * The change rows, which the database writes whenever an entry changes.
 *
 * <p>Entry points: {@link club.emberwell.entry.change.ChangeFollower} leads a {@link
 * club.emberwell.entry.change.ChangeReader} along the rows: a node's index from the place in its
 * own commit, {@link club.emberwell.entry.change.StoredReaders} from a place in the database.
 */
package club.emberwell.entry.change;
