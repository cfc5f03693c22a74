/**
 * What proves somebody: {@link club.emberwell.member.session.Sessions} for browsers, {@link
 * club.emberwell.member.session.Tokens} for programs, {@link club.emberwell.member.session.Proof}
 * before something grave.
 */
package club.emberwell.member.session;
