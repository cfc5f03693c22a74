package club.emberwell.report.reading;

import club.emberwell.laser.Process;

/**
 * What was done to what, as read.
 *
 * @param thicknessMm of the piece, mm; null = not given
 */
public record Work(
    Process process, Filed material, Filed coating, Filed colour, Double thicknessMm) {}
