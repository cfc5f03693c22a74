/**
 * The moderators' desk: what waits for a look, what was flagged, what was decided and why, what
 * rules noticed, what can be undone, and who did what.
 *
 * <p>Entry points: {@link club.emberwell.desk.Desk} is the first screen; {@link
 * club.emberwell.desk.Flags}, {@link club.emberwell.desk.People}, {@link
 * club.emberwell.desk.Undos}, {@link club.emberwell.desk.Rules}, {@link
 * club.emberwell.desk.CautionProposals}, {@link club.emberwell.desk.VocabularyCare} and {@link
 * club.emberwell.desk.AuditTrail} do the work. Every list is one bounded statement.
 */
package club.emberwell.desk;
