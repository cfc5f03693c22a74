/**
 * Where a member works: how the air moves there, and what is checked again and again. {@link
 * club.emberwell.room.Rooms} is the door, {@link club.emberwell.room.RoomAir} what follows from
 * sizes and flow.
 */
package club.emberwell.room;
