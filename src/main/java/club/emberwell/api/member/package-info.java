/**
 * The ways into the club, who is in charge, and what members may ask about their own data.
 *
 * <p>Entry points: {@link club.emberwell.api.member.MemberResource} and {@link
 * club.emberwell.api.member.TokenResource} let somebody in; {@link
 * club.emberwell.api.member.MeResource} is one's own account; {@link
 * club.emberwell.api.member.ClubResource}, {@link club.emberwell.api.member.RoleResource}, {@link
 * club.emberwell.api.member.InvitationResource} and {@link
 * club.emberwell.api.member.RequestResource} are for those in charge.
 */
package club.emberwell.api.member;
