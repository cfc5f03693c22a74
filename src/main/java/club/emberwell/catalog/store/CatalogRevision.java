package club.emberwell.catalog.store;

import com.fasterxml.jackson.annotation.JsonIgnore;
import com.fasterxml.jackson.annotation.JsonProperty;
import java.time.Instant;
import java.util.Map;
import java.util.UUID;

/**
 * One change of a term, a caution or an unfiled text.
 *
 * @param subject {@code term}, {@code caution} or {@code unfiled}
 * @param subjectId {@code kind:slug} for terms, the id for the others
 * @param version of the subject after the change
 * @param before null where it was added
 * @param by id of the member; null for the data files
 */
public record CatalogRevision(
    String subject,
    String subjectId,
    int version,
    Map<String, Object> before,
    Map<String, Object> after,
    @JsonIgnore UUID by,
    String why,
    Instant at) {
  /** The member's id, or {@link CatalogLoader#WHO}. */
  @JsonProperty
  public String who() {
    return by == null ? CatalogLoader.WHO : by.toString();
  }
}
