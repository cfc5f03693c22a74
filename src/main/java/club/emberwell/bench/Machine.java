package club.emberwell.bench;

import club.emberwell.laser.Laser;
import java.time.Instant;
import java.util.UUID;

/**
 * A member's own laser, detached.
 *
 * @param number small integer identity, for columns
 * @param pulseControl null where not said or not pulsed
 * @param deletedAt null while the owner keeps it
 */
public record Machine(
    UUID id,
    long number,
    UUID memberId,
    String name,
    Laser laser,
    PulseControl pulseControl,
    String controllerVersion,
    WrittenMachine written,
    int version,
    Instant createdAt,
    Instant updatedAt,
    Instant deletedAt) {}
