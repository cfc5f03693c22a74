package club.emberwell.api.eyewear;

import club.emberwell.eyewear.WrittenGlasses;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.util.UUID;

/**
 * A pair of glasses as sent.
 *
 * @param id made by the client, or left out
 */
record EyewearRequest(UUID id, @JsonUnwrapped WrittenGlasses written) {}
