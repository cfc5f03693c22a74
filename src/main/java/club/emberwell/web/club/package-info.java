/** Pages for those in charge: the club's settings, who is in charge, and who comes in. */
package club.emberwell.web.club;
