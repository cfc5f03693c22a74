/**
 * The first screen, {@link club.emberwell.desk.home.Desk}, and what moderators do about members,
 * {@link club.emberwell.desk.home.People}. {@link club.emberwell.desk.home.Reminder} says when
 * something waits too long.
 */
package club.emberwell.desk.home;
