/** The ways into the club, who is in charge, and what members may ask about their own data. */
package club.emberwell.api.member;
