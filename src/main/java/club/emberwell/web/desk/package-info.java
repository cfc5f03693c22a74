/**
 * The moderators' desk as pages, and members' own flags and proposals.
 *
 * <p>Entry points: {@link club.emberwell.web.desk.DeskPages} is its first screen; {@link
 * club.emberwell.web.desk.VocabularyPages}, {@link club.emberwell.web.desk.CautionPages}, {@link
 * club.emberwell.web.desk.RulePages}, {@link club.emberwell.web.desk.UndoPages} and {@link
 * club.emberwell.web.desk.AuditPages} are its places; {@link club.emberwell.web.desk.MyFlagPages}
 * and {@link club.emberwell.web.desk.ProposalPages} are open to members. What is decided on pages
 * elsewhere leads on by {@link club.emberwell.web.desk.Turn}.
 */
package club.emberwell.web.desk;
