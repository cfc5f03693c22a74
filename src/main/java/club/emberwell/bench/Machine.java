package club.emberwell.bench;

import club.emberwell.laser.Laser;
import club.emberwell.quantity.NumberStyle;
import java.time.Instant;
import java.util.UUID;

/**
 * A member's own laser, detached.
 *
 * @param number small integer identity, for columns
 * @param pulseControl null where not said or not pulsed
 * @param numberStyle by which the written numbers were read
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
    NumberStyle numberStyle,
    int version,
    Instant createdAt,
    Instant updatedAt,
    Instant deletedAt) {}
