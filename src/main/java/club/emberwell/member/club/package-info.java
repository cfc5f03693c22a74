/**
 * What the club decided about itself: {@link club.emberwell.member.club.ClubOptions} to read,
 * {@link club.emberwell.member.club.ClubCare} to change.
 */
package club.emberwell.member.club;
