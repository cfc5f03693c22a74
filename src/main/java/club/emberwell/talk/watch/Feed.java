package club.emberwell.talk.watch;

import java.time.Instant;
import java.util.List;
import java.util.UUID;

/**
 * What one watch found, for a reader of feeds.
 *
 * @param finds newest first
 */
public record Feed(UUID watchId, String label, String query, Instant createdAt, List<Find> finds) {
  public Feed {
    finds = List.copyOf(finds);
  }

  /** When something was last found; when the watch was made where nothing was. */
  public Instant updated() {
    return finds.isEmpty() ? createdAt : finds.get(0).foundAt();
  }
}
