/**
 * One account after it was made: {@link club.emberwell.member.account.Accounts} changes it, {@link
 * club.emberwell.member.account.PasswordResets} and {@link club.emberwell.member.account.Addresses}
 * work by links that are used once.
 */
package club.emberwell.member.account;
