package club.emberwell.api.lot;

import club.emberwell.lot.WrittenLot;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.util.UUID;

/**
 * A lot as sent.
 *
 * @param id made by the client, or left out
 */
record LotRequest(UUID id, @JsonUnwrapped WrittenLot written) {}
