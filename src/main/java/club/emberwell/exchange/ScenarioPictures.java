package club.emberwell.exchange;

import club.emberwell.entry.Gone;
import club.emberwell.exchange.drawing.Drawing;
import club.emberwell.exchange.drawing.Looks;
import club.emberwell.member.Actor;
import club.emberwell.remark.EntryForbidden;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.EntryUnknown;
import club.emberwell.report.photo.Photos;
import club.emberwell.report.photo.ShownPhotos;
import jakarta.enterprise.context.ApplicationScoped;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.util.Collection;
import java.util.HashSet;
import java.util.Set;
import java.util.UUID;

/**
 * Draws the pictures of the invented club while it is loaded, one after the other. What has a
 * picture already keeps it.
 */
@ApplicationScoped
class ScenarioPictures {
  private static final Duration LATER = Duration.ofMinutes(4);

  private final Photos photos;
  private final ShownPhotos shown;

  ScenarioPictures(Photos photos, ShownPhotos shown) {
    this.photos = photos;
    this.shown = shown;
  }

  /** One loading. */
  final class Album {
    private final Looks looks;
    private final Set<UUID> shown;
    private int added;

    private Album(Looks looks, Set<UUID> shown) {
      this.looks = looks;
      this.shown = shown;
    }

    /**
     * Adds what is drawn of an entry. Call it outside of transactions: drawing takes a while.
     *
     * @param picture or null
     */
    void add(Actor author, UUID entry, Instant made, ScenarioPicture picture) {
      if (picture == null || !shown.add(entry)) {
        return;
      }
      Photos.Ready drawn = Photos.drawn(Drawing.of(picture.sketch(entry), looks));
      try {
        photos.add(
            author,
            entry,
            new Photos.Added(id(entry), drawn, picture.words(looks, entry), made.plus(LATER)));
        added++;
      } catch (EntryUnknown | Gone | EntryForbidden | EntryRefused e) {
        // somebody took the entry or its picture away since
        shown.add(entry);
      }
    }

    int added() {
      return added;
    }
  }

  /**
   * Begins a loading.
   *
   * @param entries that may have a picture already
   */
  Album album(Looks looks, Collection<UUID> entries) {
    return new Album(looks, new HashSet<>(shown.firstOf(entries).keySet()));
  }

  private static UUID id(UUID entry) {
    return UUID.nameUUIDFromBytes(("drawn " + entry).getBytes(StandardCharsets.UTF_8));
  }
}
