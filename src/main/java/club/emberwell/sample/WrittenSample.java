package club.emberwell.sample;

import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A test piece as its owner wrote it down.
 *
 * @param report it shows, or null
 * @param grid of the owner's that was burned on it, or null; never both
 * @param what lists call it; null = as what it shows
 * @param box or shelf it is kept in
 * @param place where that is, or where in it the piece lies
 */
public record WrittenSample(
    @Nullable UUID report,
    @Nullable UUID grid,
    @Nullable String what,
    @Nullable String box,
    @Nullable String place,
    @Nullable String notes) {}
