package club.emberwell.entry;

import club.emberwell.listing.Place;
import club.emberwell.remark.EntryUnknown;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/**
 * Reads entries of any kind that others may see, whoever asks: the callers say who may see what
 * they find. What members keep for themselves is read by its own kind only.
 */
@ApplicationScoped
@Transactional
public class Entries {
  private final EntryRepository entries;

  Entries(EntryRepository entries) {
    this.entries = entries;
  }

  public Optional<Entry> find(EntryRef ref) {
    return entries.find(ref);
  }

  /**
   * One entry.
   *
   * @throws EntryUnknown where there is none
   */
  public Entry get(EntryRef ref) {
    return find(ref).orElseThrow(() -> new EntryUnknown(ref.kind().code()));
  }

  /** In no particular order, missing ones left out. */
  public List<Entry> all(Collection<UUID> ids) {
    return entries.all(ids);
  }

  /** What waits for a look, oldest first. */
  public List<Entry> waiting(Place place) {
    return entries.waiting(place);
  }

  /** A member's newest entries, in whatever state. */
  public List<Entry> of(UUID member, Place place) {
    return entries.of(member, place);
  }
}
