package club.emberwell.api.sample;

import club.emberwell.sample.WrittenSample;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.util.UUID;

/**
 * A sample as sent.
 *
 * @param id made by the client, or left out
 */
record SampleRequest(UUID id, @JsonUnwrapped WrittenSample written) {}
