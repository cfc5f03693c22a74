package club.emberwell.catalog.store;

import java.time.Instant;
import java.util.Map;

/**
 * One change of a term, a caution, a merge or an unfiled text.
 *
 * @param subject {@code term}, {@code caution}, {@code merge} or {@code unfiled}
 * @param subjectId {@code kind:slug} for terms, the id for the others
 * @param version of the subject after the change
 * @param before null where it was added
 * @param who as the caller named the person; {@link CatalogLoader#WHO} for the data files
 */
public record CatalogRevision(
    String subject,
    String subjectId,
    int version,
    Map<String, Object> before,
    Map<String, Object> after,
    String who,
    String why,
    Instant at) {}
