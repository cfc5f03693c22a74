/**
 * Pages of one's rooms: their air, and what is checked there.
 *
 * <p>Entry points: {@link club.emberwell.web.room.RoomPages}.
 */
package club.emberwell.web.room;
