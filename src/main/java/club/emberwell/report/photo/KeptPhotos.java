package club.emberwell.report.photo;

import club.emberwell.entry.EntryAccess;
import club.emberwell.entry.EntryEntity;
import club.emberwell.entry.EntryKind;
import club.emberwell.entry.EntryLife;
import club.emberwell.member.Actor;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.EntryUnknown;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.Collection;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * The one photo of a lot or a fixture. It is no entry, so that no desk, flag or feed can meet it:
 * whoever may not see what it belongs to does not see it.
 */
@ApplicationScoped
public class KeptPhotos {
  private final KeptPhotoRepository photos;
  private final PhotoRepository entries;
  private final PhotoSpace space;
  private final EntryLife life;

  KeptPhotos(
      KeptPhotoRepository photos, PhotoRepository entries, PhotoSpace space, EntryLife life) {
    this.photos = photos;
    this.entries = entries;
    this.space = space;
    this.life = life;
  }

  /** One of them, without its bytes. */
  public record Kept(UUID entry, int width, int height) {}

  /**
   * Keeps a picture in the place of the one before.
   *
   * @throws EntryRefused where the member has enough pictures
   */
  @Transactional
  public Kept put(Actor actor, EntryKind kind, UUID id, Photos.Ready ready) {
    EntryAccess.standing(actor, life.own(actor, Set.of(kind), id, null));
    space.need(EntryAccess.signedIn(actor));
    Optional<KeptPhotoEntity> before = photos.findByIdOptional(id);
    KeptPhotoEntity photo = before.orElseGet(() -> new KeptPhotoEntity(id));
    photo.take(ready, Instant.now());
    if (before.isEmpty()) {
      photos.persist(photo);
    }
    return photo.toKept();
  }

  /** Takes the picture and its bytes away for good. */
  @Transactional
  public void remove(Actor actor, EntryKind kind, UUID id) {
    photos.delete(found(actor, kind, id));
  }

  /** The JPEG. */
  @Transactional
  public byte[] bytes(Actor actor, EntryKind kind, UUID id) {
    return found(actor, kind, id).picture();
  }

  private KeptPhotoEntity found(Actor actor, EntryKind kind, UUID id) {
    EntryEntity entry =
        entries
            .parent(id)
            .filter(there -> there.kind() == kind)
            .orElseThrow(() -> new EntryUnknown(kind.code()));
    EntryAccess.standing(actor, entry);
    return photos.findByIdOptional(id).orElseThrow(() -> new EntryUnknown("photo"));
  }

  /** That of an entry the reader may see. */
  @Transactional
  public Optional<Kept> of(UUID id) {
    return photos.findByIdOptional(id).map(KeptPhotoEntity::toKept);
  }

  /** Those of several entries that the reader may see: one statement. */
  @Transactional
  public Map<UUID, Kept> of(Collection<UUID> ids) {
    return ids.isEmpty()
        ? Map.of()
        : photos.of(ids).stream().collect(Collectors.toMap(Kept::entry, Function.identity()));
  }
}
