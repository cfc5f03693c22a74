package club.emberwell.api.room;

import club.emberwell.room.WrittenRoom;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.util.UUID;

/**
 * A room as sent.
 *
 * @param id made by the client, or left out
 */
record RoomRequest(UUID id, @JsonUnwrapped WrittenRoom written) {}
