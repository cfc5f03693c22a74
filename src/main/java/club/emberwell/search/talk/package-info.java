/**
 * Searching what is talked of, and holding new entries against kept searches. Entry points: {@link
 * club.emberwell.search.talk.TalkSearch} answers queries and sets new entries apart. The talk is
 * small beside the trials: it is indexed in memory, read anew at every start and follows the change
 * rows from there.
 */
package club.emberwell.search.talk;
