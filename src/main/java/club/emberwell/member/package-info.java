/**
 * Who somebody is. {@link club.emberwell.member.Actor} asks, {@link club.emberwell.member.Members}
 * finds accounts, {@link club.emberwell.member.Audit} keeps what was done; {@link
 * club.emberwell.member.Role} and {@link club.emberwell.member.Scope} say what may be done. The
 * packages below it, from bottom to top: pace, session, club, mail, account, door, sso.
 */
package club.emberwell.member;
