package club.emberwell.entry;

import java.time.Instant;
import java.util.UUID;

/**
 * An entry about to begin.
 *
 * @param parent what it belongs to, or null
 * @param origin where it was made
 * @param at when it was made
 */
public record NewEntry(UUID id, EntryKind kind, UUID parent, Origin origin, Instant at) {}
