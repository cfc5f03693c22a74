/**
 * Pages of an account.
 *
 * <p>Entry points: {@link club.emberwell.web.account.SignPages} is the door; {@link
 * club.emberwell.web.account.JoinPages} and {@link club.emberwell.web.account.SsoPages} are the
 * other ways in; {@link club.emberwell.web.account.MePages}, {@link
 * club.emberwell.web.account.AddressPages} and {@link club.emberwell.web.account.PersonalDataPages}
 * are what members change themselves.
 */
package club.emberwell.web.account;
