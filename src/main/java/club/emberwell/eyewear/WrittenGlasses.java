package club.emberwell.eyewear;

import org.jspecify.annotations.Nullable;

/**
 * A pair of glasses as its owner wrote it down.
 *
 * @param name the owner's own
 * @param marking what is printed on it, line by line
 */
public record WrittenGlasses(
    @Nullable String name, @Nullable String marking, @Nullable String notes) {}
