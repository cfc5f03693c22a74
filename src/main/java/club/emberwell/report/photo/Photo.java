package club.emberwell.report.photo;

import java.time.Instant;
import java.util.UUID;

/**
 * A picture of a report, without its bytes.
 *
 * @param width of the large size, pixels
 * @param height of the large size, pixels
 * @param sizeBytes of both sizes together
 */
public record Photo(
    UUID id, UUID reportId, int width, int height, int sizeBytes, Instant createdAt) {}
