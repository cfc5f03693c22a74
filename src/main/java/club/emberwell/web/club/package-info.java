/**
 * Pages for those in charge: the club's settings, who is in charge, and who comes in.
 *
 * <p>Entry points: {@link club.emberwell.web.club.ClubPages}; {@link
 * club.emberwell.web.club.PeoplePages}; {@link club.emberwell.web.club.DoorPages}.
 */
package club.emberwell.web.club;
