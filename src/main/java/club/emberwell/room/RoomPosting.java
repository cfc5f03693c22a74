package club.emberwell.room;

import club.emberwell.quantity.NumberStyle;
import java.util.UUID;

/**
 * A room on its way in.
 *
 * @param id made by the client, or null; the same id with the same words twice is one room
 * @param style by which its numbers are read
 */
public record RoomPosting(UUID id, WrittenRoom written, NumberStyle style) {}
