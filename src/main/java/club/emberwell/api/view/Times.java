package club.emberwell.api.view;

import java.time.Instant;

/** When something was made and last changed. */
public record Times(Instant createdAt, Instant updatedAt) {}
