package club.emberwell.api.machine;

import club.emberwell.bench.WrittenMachine;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.util.UUID;

/**
 * A machine as sent.
 *
 * @param id made by the client, or left out
 */
record MachineRequest(UUID id, @JsonUnwrapped WrittenMachine written) {}
