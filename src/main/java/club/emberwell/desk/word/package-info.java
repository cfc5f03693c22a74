/**
 * What moderators do to the words of the club: {@link club.emberwell.desk.word.VocabularyCare} to
 * terms, {@link club.emberwell.desk.word.CautionProposals} to cautions; {@link
 * club.emberwell.desk.word.MergeEffects} says beforehand what a merge moves.
 */
package club.emberwell.desk.word;
