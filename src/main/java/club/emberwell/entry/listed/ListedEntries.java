package club.emberwell.entry.listed;

import club.emberwell.entry.EntryKind;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.List;
import java.util.UUID;

/** The addresses of live reports and questions, in parts by their numbers: one statement each. */
@ApplicationScoped
public class ListedEntries {
  private final ListedEntryRepository entries;

  ListedEntries(ListedEntryRepository entries) {
    this.entries = entries;
  }

  /**
   * So many consecutive numbers of entries that at least one is listed.
   *
   * @param updated when one of its entries was last changed
   */
  public record Part(int number, Instant updated) {}

  /** An entry that can be found. */
  public record Listed(EntryKind kind, UUID id, Instant updated) {
    /** Where it is read: a path of this server. */
    public String path() {
      return kind.path(id, null);
    }
  }

  /** In their order. */
  @Transactional
  public List<Part> parts() {
    return entries.parts();
  }

  /** The entries of a part; none where there is no such part. */
  @Transactional
  public List<Listed> part(int number) {
    return entries.part(number);
  }
}
