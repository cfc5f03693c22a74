/**
 * The one life of what members write: states, versions, revisions with their reasons, first looks,
 * decisions, and the change rows that tell every reader what to look at again.
 *
 * <p>Entry points: {@link club.emberwell.entry.EntryLife} is the only door through which entries
 * change, {@link club.emberwell.entry.EntryAccess} says who may, {@link
 * club.emberwell.entry.Entries} and {@link club.emberwell.entry.Verdicts} read what all kinds
 * share, {@link club.emberwell.entry.change.ChangeFollower} hands out changes. A kind ({@link
 * club.emberwell.entry.Kind}) keeps its own columns in a table of its own under the entry's id.
 */
package club.emberwell.entry;
