/** Accounts, sessions, tokens, roles. */
package club.emberwell.member;
