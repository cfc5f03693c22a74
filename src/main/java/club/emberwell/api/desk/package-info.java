/**
 * The moderators' desk, and flags and proposals of members, over JSON.
 *
 * <p>Entry points: {@link club.emberwell.api.desk.DeskResource}; {@link
 * club.emberwell.api.desk.FlagResource} and {@link club.emberwell.api.desk.CautionProposalResource}
 * are open to members.
 */
package club.emberwell.api.desk;
