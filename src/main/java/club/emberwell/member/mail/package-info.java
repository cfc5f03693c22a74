/** Letters: {@link club.emberwell.member.mail.MailOutbox} takes them, a sender delivers them. */
package club.emberwell.member.mail;
