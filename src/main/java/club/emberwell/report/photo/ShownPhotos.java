package club.emberwell.report.photo;

import club.emberwell.entry.Entry;
import club.emberwell.entry.EntryAccess;
import club.emberwell.entry.EntryEntity;
import club.emberwell.entry.EntryKind;
import club.emberwell.member.Actor;
import club.emberwell.remark.EntryUnknown;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;

/** The pictures of reports, questions and answers, for whoever may see them. */
@ApplicationScoped
public class ShownPhotos {
  private final PhotoRepository photos;
  private final PictureTurns turns;

  ShownPhotos(PhotoRepository photos, PictureTurns turns) {
    this.photos = photos;
    this.turns = turns;
  }

  /**
   * A photo, for whoever may see it and what it belongs to.
   *
   * @throws EntryUnknown where it must not be known
   */
  @Transactional
  public Photo get(Actor actor, UUID id) {
    seen(actor, id);
    return photos.there(id);
  }

  private PhotoRepository.Pair seen(Actor actor, UUID id) {
    PhotoRepository.Pair pair = photos.pair(id).orElseThrow(() -> new EntryUnknown("picture"));
    EntryAccess.see(actor, pair.parent());
    EntryAccess.see(actor, pair.photo());
    return pair;
  }

  /** Those in sight of an entry, the first one first, for whoever may see it. */
  @Transactional
  public List<Photo> of(Actor actor, EntryKind kind, UUID id) {
    EntryEntity parent =
        photos
            .parent(id)
            .filter(entry -> entry.kind() == kind)
            .orElseThrow(() -> new EntryUnknown(kind.code()));
    EntryAccess.see(actor, parent);
    return photos.of(id);
  }

  /**
   * What photos belong to, for whoever may see it.
   *
   * @throws EntryUnknown where there is none
   */
  @Transactional
  public Entry pictured(Actor actor, UUID id) {
    EntryEntity entry = parent(id);
    EntryAccess.see(actor, entry);
    return entry.toEntry(null);
  }

  /** Lets through whoever may add photos to an entry. */
  @Transactional
  public void own(Actor actor, UUID id) {
    EntryAccess.own(actor, parent(id));
  }

  private EntryEntity parent(UUID id) {
    return photos
        .parent(id)
        .filter(entry -> EntryKind.PICTURED.contains(entry.kind()))
        .orElseThrow(() -> new EntryUnknown("entry"));
  }

  /** Those in sight of several entries that the reader may see: one statement. */
  @Transactional
  public Map<UUID, List<Photo>> of(Collection<UUID> ids) {
    return ids.isEmpty()
        ? Map.of()
        : photos.of(ids).stream().collect(Collectors.groupingBy(photo -> photo.of().id()));
  }

  /** The first of each of several entries that the reader may see: one statement. */
  @Transactional
  public Map<UUID, Photo> firstOf(Collection<UUID> ids) {
    return ids.isEmpty()
        ? Map.of()
        : photos.firstOf(ids).stream()
            .collect(Collectors.toMap(photo -> photo.of().id(), Function.identity()));
  }

  /** A picture in one of its sizes, for whoever may see it and what it belongs to. */
  @Transactional
  public byte[] bytes(Actor actor, UUID id, PhotoSize size) {
    seen(actor, id);
    byte[] jpeg = photos.bytes(id, size);
    if (jpeg != null) {
      return jpeg;
    }
    byte[] large = photos.bytes(id, PhotoSize.LARGE);
    return photos.there(id).sizes().contains(size) ? middle(actor, id, large) : large;
  }

  /** Kept from now on; the large one for once where many pictures are worked at. */
  private byte[] middle(Actor actor, UUID id, byte[] large) {
    try {
      byte[] middle = turns.now(actor.memberId(), stint -> PictureCleaner.middle(large));
      photos.keep(id, middle);
      return middle;
    } catch (PicturesBusy e) {
      return large;
    }
  }
}
