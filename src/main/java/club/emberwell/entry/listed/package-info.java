/**
 * Which entries strangers can find, without what they say: {@link
 * club.emberwell.entry.listed.ListedEntries} in parts of a bounded size.
 */
package club.emberwell.entry.listed;
