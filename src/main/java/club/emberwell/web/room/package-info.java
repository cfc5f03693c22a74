/** Pages of one's rooms: their air, and what is checked there. */
package club.emberwell.web.room;
