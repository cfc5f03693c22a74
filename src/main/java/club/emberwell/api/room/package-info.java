/**
 * A member's rooms, their air and what is checked there, over JSON.
 *
 * <p>Entry points: {@link club.emberwell.api.room.RoomResource}.
 */
package club.emberwell.api.room;
