package club.emberwell.eyewear;

import java.util.UUID;

/**
 * A pair of glasses on its way in.
 *
 * @param id made by the client, or null; the same id with the same words twice is one pair
 */
public record GlassesPosting(UUID id, WrittenGlasses written) {}
