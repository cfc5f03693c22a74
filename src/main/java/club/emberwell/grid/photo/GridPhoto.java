package club.emberwell.grid.photo;

import java.time.Instant;
import java.util.UUID;

/**
 * The photo of a burned grid, without its bytes.
 *
 * @param width pixels
 * @param height pixels
 * @param corners of the grid in it, null = not marked yet
 * @param shown the same picture among those of the report, null = it is not there
 * @param takenAt when it came in
 */
public record GridPhoto(
    UUID grid, int width, int height, Corners corners, UUID shown, Instant takenAt) {}
