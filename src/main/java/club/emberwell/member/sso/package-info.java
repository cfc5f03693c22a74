/**
 * Signing in by the word of the club's OpenID Connect provider: {@link
 * club.emberwell.member.sso.SingleSignOn} for the trip, {@link
 * club.emberwell.member.sso.SsoArrivals} for those who are new here.
 */
package club.emberwell.member.sso;
